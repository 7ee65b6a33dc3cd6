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
    /**
     * For a program that closes it soon. Where a full disk has no room for what SQLite keeps beside
     * a record, nobody else can write to it meanwhile.
     */
    READ_BRIEFLY,
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
    requireSuitable(absolute, mode, settings);
    if (mode != Mode.WRITE) {
      requireSomething(absolute);
    }
    Database database =
        mode == Mode.WRITE ? forWriting(absolute, settings) : forReading(absolute, mode, settings);
    try {
      return new SqliteRecord(
          database,
          mode,
          () -> {
            // First: an empty mount point must not be taken for the place of a new record.
            requireSomething(absolute);
            requireSuitable(absolute, mode, settings);
          });
    } catch (RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static void requireSuitable(Path file, Mode mode, SqliteSettings settings) {
    new PlaceCheck(settings.probe()).require(file);
    FileHeader.requireOurs(file);
    if (mode == Mode.WRITE) {
      requireWritable(file);
    }
  }

  private static Database forWriting(Path file, SqliteSettings settings) {
    Database database = Database.open(file, Mode.WRITE, settings);
    try {
      Schema.bringUpToDate(database);
      return database;
    } catch (RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static Database forReading(Path file, Mode mode, SqliteSettings settings) {
    try {
      return forReading(file, mode, settings, ReadingWay.SHARED);
    } catch (RecordUnavailableException refused) {
      ReadingWay way = isOnReadOnlyDisk(file) ? ReadingWay.UNCHANGING : ReadingWay.ALONE;
      if (refused.reason() == Reason.LOCKED
          || (way == ReadingWay.ALONE && mode != Mode.READ_BRIEFLY)) {
        throw refused;
      }
      if (way == ReadingWay.UNCHANGING) {
        requireNothingBeside(file, refused);
      }
      try {
        return forReading(file, mode, settings, way);
      } catch (RecordUnavailableException again) {
        refused.addSuppressed(again);
        throw refused;
      }
    }
  }

  private static Database forReading(
      Path file, Mode mode, SqliteSettings settings, ReadingWay way) {
    Database database = Database.open(file, mode, settings, way);
    try {
      requirePresentVersion(database);
      return database;
    } catch (RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static boolean isOnReadOnlyDisk(Path file) {
    try {
      return Files.getFileStore(file).isReadOnly();
    } catch (IOException unknown) {
      return false;
    }
  }

  /** Rows that are not in the file itself yet would be passed over in silence. */
  private static void requireNothingBeside(Path file, RecordUnavailableException refused) {
    Path log = file.resolveSibling(file.getFileName() + "-wal");
    try {
      if (Files.exists(log) && Files.size(log) > 0) {
        throw new RecordUnavailableException(
            Reason.READ_ONLY,
            file,
            "Could not open the record "
                + file
                + ": its disk is read-only, and newer rows are in "
                + log
                + ", which SQLite can only read where it can write. Copy both files to another disk"
                + " and open the copy.",
            refused);
      }
    } catch (IOException e) {
      throw unreachable(file, e);
    }
  }

  /** What is older would have to be brought up to date, which reading cannot do. */
  static void requirePresentVersion(Database database) {
    if (Schema.versionOf(database) != Schema.VERSION) {
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
