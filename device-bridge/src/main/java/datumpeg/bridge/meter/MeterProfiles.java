package datumpeg.bridge.meter;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The profiles that come with the program and those the user added. Immutable. */
public final class MeterProfiles {
  private static final List<String> SHIPPED =
      List.of("general-text-line", "nmea-transducer", "self-describing");
  private static final String ENDING = ".toml";

  /** A meter that sends one value a line as text; used where no profile is named. */
  public static final MeterProfile GENERAL_TEXT_LINE = shipped("general-text-line");

  /** A Bluetooth LE meter that says itself what its values are; used where no profile is named. */
  public static final MeterProfile SELF_DESCRIBING = shipped("self-describing");

  private final Path folder;

  /**
   * @param folder of the user's own profiles, each {@code ID.toml}; it need not be there
   */
  public MeterProfiles(Path folder) {
    this.folder = folder;
  }

  /**
   * The profile of this name: one of the program's, or {@code ID.toml} in the user's folder.
   *
   * @throws InputException if there is none, or its file has mistakes or another id
   */
  public MeterProfile named(String id) {
    if (SHIPPED.contains(id)) {
      return shipped(id);
    }
    if (!ids().contains(id)) {
      throw new InputException(
          "There is no meter profile '%s'; known: %s. Put your own into %s."
              .formatted(id, String.join(", ", ids()), folder.resolve("ID" + ENDING)));
    }
    Path file = folder.resolve(id + ENDING);
    MeterProfile profile = ProfileFile.read(text(file), file.toString());
    if (!profile.id().equals(id)) {
      throw new InputException(
          file + ": the id is '" + profile.id() + "'; expected '" + id + "' as the file is named.");
    }
    return profile;
  }

  /** The names of all profiles, the program's first. */
  public List<String> ids() {
    List<String> ids = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + ENDING)) {
        files.forEach(file -> ids.add(file.toFile().getName().replaceAll("\\.toml$", "")));
      } catch (IOException e) {
        throw new OuterWorldException(
            "The folder "
                + folder
                + " of meter profiles could not be read: "
                + e.getMessage()
                + ".",
            e);
      }
    }
    ids.removeAll(SHIPPED);
    ids.sort(String::compareTo);
    ids.addAll(0, SHIPPED);
    return ids;
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (NoSuchFileException e) {
      throw new InputException("There is no file " + file + ".", e);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The meter profile " + file + " could not be read: " + e.getMessage() + ".", e);
    }
  }

  private static MeterProfile shipped(String id) {
    String resource = "/datumpeg/meters/" + id + ENDING;
    try (InputStream in = MeterProfiles.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("The resource " + resource + " is missing.");
      }
      return ProfileFile.read(new String(in.readAllBytes(), StandardCharsets.UTF_8), resource);
    } catch (IOException e) {
      throw new UncheckedIOException("The resource " + resource + " cannot be read.", e);
    }
  }
}
