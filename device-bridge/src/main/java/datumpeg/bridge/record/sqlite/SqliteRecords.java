package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.NotOurRecordException;
import datumpeg.bridge.record.NotOurRecordException.Found;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import datumpeg.bridge.record.SiteRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Opens records. */
public final class SqliteRecords {

  /** What the record is opened for. */
  public enum Mode {
    /** Where the disk is full, {@link SiteRecord#obstacle} says so. */
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
    requireSuitable(absolute, mode, settings);
    if (mode != Mode.WRITE) {
      requireSomething(absolute);
    }
    Opened opened =
        mode == Mode.WRITE
            ? new Opened(forWriting(absolute, settings), Optional.empty())
            : forReading(absolute, settings);
    return record(opened, mode, settings);
  }

  private static SiteRecord record(Opened opened, Mode mode, SqliteSettings settings) {
    Path file = opened.database().file();
    try {
      return new SqliteRecord(
          opened.database(),
          mode,
          () -> {
            // First: an empty mount point must not be taken for the place of a new record.
            requireSomething(file);
            requireSuitable(file, mode, settings);
          },
          opened.obstacle());
    } catch (RuntimeException | Error e) {
      opened.database().close();
      throw e;
    }
  }

  /**
   * For writing as soon as the disk has room, which it may have now. Else {@link
   * SiteRecord#obstacle} says so, and the record can be read until it is let go of: {@link
   * SiteRecord#reopen} then opens it for writing.
   *
   * @throws RecordUnavailableException as {@link #open(Path, Mode)} does, unless the disk is full
   */
  public static SiteRecord openOnFullDiskToo(Path file) {
    try {
      return open(file, Mode.WRITE);
    } catch (RecordUnavailableException refused) {
      if (refused.reason() != Reason.FULL) {
        throw refused;
      }
      Path absolute = file.toAbsolutePath();
      requireSomething(absolute);
      SqliteSettings settings = SqliteSettings.usual();
      return record(
          new Opened(
              present(Database.readUntilReopened(absolute, settings)),
              Optional.of(obstacle(absolute, refused))),
          Mode.WRITE,
          settings);
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

  /**
   * A file that is open.
   *
   * @param obstacle why nothing can be added
   */
  private record Opened(Database database, Optional<String> obstacle) {}

  private static Opened forReading(Path file, SqliteSettings settings) {
    boolean readOnly = ReadOnlyDisk.holds(file);
    Optional<String> obstacle =
        readOnly ? Optional.of(obstacle(file, "read-only")) : Optional.empty();
    try {
      return new Opened(forReading(file, settings, ReadingWay.SHARED), obstacle);
    } catch (RecordUnavailableException refused) {
      if (refused.reason() == Reason.LOCKED) {
        throw refused;
      }
      if (readOnly) {
        requireNothingBeside(file, refused);
      }
      return new Opened(
          otherwise(file, settings, readOnly ? ReadingWay.UNCHANGING : ReadingWay.ALONE, refused),
          obstacle.or(() -> Optional.of(obstacle(file, refused))));
    }
  }

  private static Database otherwise(
      Path file, SqliteSettings settings, ReadingWay way, RecordUnavailableException refused) {
    try {
      return forReading(file, settings, way);
    } catch (RecordUnavailableException again) {
      refused.addSuppressed(again);
      throw refused;
    }
  }

  private static Database forReading(Path file, SqliteSettings settings, ReadingWay way) {
    return present(Database.open(file, Mode.READ, settings, way));
  }

  /** Looks into the file, which shows whether it can be read. */
  private static Database present(Database database) {
    try {
      requirePresentVersion(database);
      return database;
    } catch (RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static String obstacle(Path file, RecordUnavailableException refused) {
    return refused.reason() == Reason.FULL
        ? obstacle(file, "full")
        : "What the record "
            + file
            + " holds can be looked at, but nothing can be added to it: its folder does not take the"
            + " files that SQLite keeps beside it.";
  }

  private static String obstacle(Path file, String state) {
    return "The disk of the record "
        + file
        + " is "
        + state
        + ": what is stored can be looked at, but nothing can be added to it.";
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
