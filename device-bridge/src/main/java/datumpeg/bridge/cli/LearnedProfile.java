package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.ProfileText;
import datumpeg.bridge.meter.learn.Proposal;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/** The file of a profile that is being learned. */
record LearnedProfile(DatumpegCommand program, String id) {
  private static final String ACCURACY =
      """

      # How accurate the meter is, from its data sheet; without it outcomes assume a common meter.
      # [accuracy]
      # quantity = "distance"
      # expanded_uncertainty = "1.5 mm"
      # coverage = 2
      # resolution = "1 mm"
      """;

  /**
   * @throws InputException if the name is none, or taken
   */
  void requireFree() {
    if (!id.matches("[A-Za-z0-9-]{1,64}")) {
      throw new InputException(
          "--as is '"
              + id
              + "'; expected 1 to 64 letters, digits or hyphens for the profile's name.");
    }
    if (Records.profiles(program).ids().contains(id)) {
      throw new InputException(
          "There is a meter profile '"
              + id
              + "' already; choose another name, or remove "
              + file());
    }
  }

  Path file() {
    return program.recordFile().resolveSibling("meters").resolve(id + ".toml");
  }

  /** Writes what was found and says how to use it. */
  void write(Proposal found, SerialSettings serial, Bytes trigger, String link) {
    MeterProfile learned = found.profile();
    MeterProfile profile =
        new MeterProfile(
            id, serial, learned.language(), learned.sign(), learned.angleZero(), null, trigger);
    List<String> remarks =
        List.of("Learned from a meter's bytes and its display: " + found.words());
    try {
      Files.createDirectories(program.recordFile().resolveSibling("meters"));
      Files.writeString(
          file(), ProfileText.of(profile, remarks) + ACCURACY, StandardOpenOption.CREATE_NEW);
    } catch (FileAlreadyExistsException e) {
      throw new InputException(file() + " is there already; nothing was written.", e);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The profile could not be written to " + file() + ": " + e.getMessage() + ".", e);
    }
    tell(found, profile, link);
  }

  private void tell(Proposal found, MeterProfile profile, String link) {
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("profile", profile.identity())
              .put("words", found.words())
              .put("file", file().toString())
              .build());
      return;
    }
    program.console().out().println("Found: " + found.words() + ".");
    program.console().out().println("Written to " + file());
    program
        .console()
        .out()
        .println("Use it: measure JOB --stage STAGE --link " + link + " --meter " + id);
  }
}
