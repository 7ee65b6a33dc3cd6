package datumpeg.desktop.source;

import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/** Opens the record at a path, for reading only. */
public record SiteRecordOpening(Path file) implements JobSource.Opening {
  @Override
  public JobSource open() {
    return new SiteRecordSource(SqliteRecords.open(file, SqliteRecords.Mode.READ));
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
