package datumpeg.bridge.cli;

import datumpeg.bridge.derived.DerivedStore;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.DerivedJobs;
import datumpeg.bridge.jobs.JobHistories;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonWriter;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.DerivedFile;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** What commands that use the record do alike. */
final class Records {
  private Records() {}

  /** Open to be read; that nothing can be added is said. */
  static SiteRecord forReading(DatumpegCommand program) {
    SiteRecord record = SqliteRecords.open(program.recordFile(), SqliteRecords.Mode.READ);
    record.obstacle().ifPresent(program.console().err()::println);
    return record;
  }

  /** The outcomes of all jobs, of which only what is new is worked out. */
  static JobHistories histories(DatumpegCommand program) {
    try (SiteRecord record = forReading(program);
        DerivedStore store =
            DerivedFile.open(DerivedFile.beside(program.recordFile()), DerivedJobs.basis())) {
      return JobHistories.of(new DerivedJobs(record, store));
    }
  }

  /** For a session, whose readings wait where the disk is full; that it is so is said. */
  static SiteRecord forMeasuring(DatumpegCommand program) {
    SiteRecord record = SqliteRecords.openOnFullDiskToo(program.recordFile());
    record
        .obstacle()
        .ifPresent(
            sentence ->
                program.console().err().println(sentence + " Readings wait until there is room."));
    return record;
  }

  static SiteRecord forWriting(DatumpegCommand program) {
    return SqliteRecords.open(program.recordFile(), SqliteRecords.Mode.WRITE);
  }

  /** For writing to a record that must be there: a slip in its name makes no empty one. */
  static SiteRecord existing(DatumpegCommand program) {
    return Files.exists(program.recordFile()) ? forWriting(program) : forReading(program);
  }

  static SessionStart start(DatumpegCommand program) {
    return start(program, "");
  }

  static SessionStart start(DatumpegCommand program, String operator) {
    return new SessionStart(operator, ProgramVersion.number(), program.console().clock());
  }

  /** The program's meter profiles and the user's, which lie beside the record. */
  static MeterProfiles profiles(DatumpegCommand program) {
    return new MeterProfiles(program.recordFile().resolveSibling("meters"));
  }

  /** Prints the answer as one JSON document. */
  static void print(DatumpegCommand program, JsonObject answer) {
    program.console().out().print(JsonWriter.pretty(answer));
  }

  /** A file as the person names it, from the console's folder. */
  static Path file(DatumpegCommand program, String name) {
    return program.console().workingDirectory().resolve(name);
  }

  static byte[] bytes(DatumpegCommand program, String name) {
    try {
      return Files.readAllBytes(file(program, name));
    } catch (NoSuchFileException e) {
      throw new InputException("There is no file " + name + ".", e);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The file " + name + " could not be read: " + e.getMessage() + ".", e);
    }
  }
}
