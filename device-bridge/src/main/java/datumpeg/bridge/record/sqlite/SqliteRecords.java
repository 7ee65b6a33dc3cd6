package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.NotOurRecordException;
import datumpeg.bridge.record.NotOurRecordException.Found;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import datumpeg.bridge.record.SiteRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Opens records. */
public final class SqliteRecords {

  /** What the record is opened for. */
  public enum Mode {
    READ,
    WRITE
  }

  private SqliteRecords() {}

  /** As {@link #open(Path, Mode, SqliteSettings)} with the usual settings. */
  public static SiteRecord open(Path file, Mode mode) {
    return open(file, mode, SqliteSettings.usual());
  }

  /**
   * For writing, the file and its folders are made if they are not there.
   *
   * @throws NotOurRecordException if the file is not a record this version can open, or is absent
   *     or empty and was to be read; nothing is changed in it
   * @throws datumpeg.bridge.record.UnsuitablePlaceException if it lies on a network or in a synced
   *     folder
   * @throws RecordUnavailableException if it cannot be opened: locked, read-only, full, not
   *     reachable
   * @throws datumpeg.bridge.record.RecordDamagedException if a page needed for opening is damaged
   */
  public static SiteRecord open(Path file, Mode mode, SqliteSettings settings) {
    Path absolute = file.toAbsolutePath();
    new PlaceCheck(settings.probe()).require(absolute);
    FileHeader.requireOurs(absolute);
    if (mode == Mode.READ) {
      requireSomething(absolute);
    } else {
      requireWritable(absolute);
    }
    Database database = Database.open(absolute, mode, settings);
    try {
      prepare(database, mode);
      return new SqliteRecord(database, mode);
    } catch (RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static void prepare(Database database, Mode mode) {
    if (mode == Mode.WRITE) {
      Schema.bringUpToDate(database);
    } else if (Schema.versionOf(database) != Schema.VERSION) {
      throw new NotOurRecordException(
          Found.NOTHING,
          "The record "
              + database.file()
              + " is not set up, or is of an older version; open it once for writing.");
    }
  }

  private static void requireSomething(Path file) {
    try {
      if (!Files.exists(file) || Files.size(file) == 0) {
        throw new NotOurRecordException(
            Found.NOTHING,
            "There is no record at "
                + file
                + " yet; it is made when the first job is taken in. Expected the file of a record.");
      }
    } catch (IOException e) {
      throw unreachable(file, e);
    }
  }

  private static void requireWritable(Path file) {
    @Nullable Path folder = file.getParent();
    try {
      if (folder != null) {
        Files.createDirectories(folder);
      }
    } catch (IOException e) {
      throw unreachable(file, e);
    }
    if (Files.exists(file)
        ? !Files.isWritable(file)
        : folder != null && !Files.isWritable(folder)) {
      throw new RecordUnavailableException(
          Reason.READ_ONLY,
          file,
          "Could not open the record "
              + file
              + " for writing: the file or its folder is read-only. Nothing was stored; it needs the"
              + " right to write both.",
          null);
    }
  }

  private static RecordUnavailableException unreachable(Path file, IOException e) {
    return new RecordUnavailableException(
        Reason.NOT_REACHABLE,
        file,
        "Could not reach the record " + file + ": its folder cannot be made or read.",
        e);
  }
}
