package datumpeg.desktop.source;

import datumpeg.bridge.jobs.DerivedJobs;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.DerivedFile;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/** Opens the record at a path, for reading only; what follows from it is kept beside it. */
public record SiteRecordOpening(Path file) implements JobSource.Opening {
  @Override
  public JobSource open() {
    SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ);
    return new SiteRecordSource(
        record, DerivedFile.open(DerivedFile.beside(file), DerivedJobs.basis()));
  }

  @Override
  public String identity() {
    try {
      Object key = Files.readAttributes(file, BasicFileAttributes.class).fileKey();
      return key == null ? "" : key.toString();
    } catch (IOException e) {
      return ""; // whether it is missing or unreadable is said by opening it
    }
  }
}
