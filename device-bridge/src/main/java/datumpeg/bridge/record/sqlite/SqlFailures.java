package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.RecordDamagedException;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import org.sqlite.SQLiteErrorCode;

/** Turns what SQLite answers into what a person can act on, by its result code alone. */
final class SqlFailures {
  private static final int PRIMARY_CODE = 0xff;

  /** The least size of the index that SQLite keeps beside a record (sqlite.org/walformat.html). */
  private static final long LEAST_ROOM_BYTES = 32 * 1024;

  private final Path file;
  private final Duration lockWait;

  SqlFailures(Path file, Duration lockWait) {
    this.file = file;
    this.lockWait = lockWait;
  }

  static SQLiteErrorCode codeOf(SQLException e) {
    return SQLiteErrorCode.getErrorCode(e.getErrorCode() & PRIMARY_CODE);
  }

  static boolean isDamage(SQLException e) {
    SQLiteErrorCode code = codeOf(e);
    return code == SQLiteErrorCode.SQLITE_CORRUPT || code == SQLiteErrorCode.SQLITE_NOTADB;
  }

  /**
   * @param attempt what was tried, as the end of "could not": "store 3 rows"
   */
  RuntimeException translate(String attempt, SQLException e) {
    String could = "Could not " + attempt + " in the record " + file + ": ";
    return switch (plain(codeOf(e))) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          unavailable(
              Reason.LOCKED,
              could
                  + "another process held it locked for longer than the "
                  + seconds()
                  + " s we wait. Nothing was stored; try again when the other one has finished.",
              e);
      case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
          unavailable(
              Reason.READ_ONLY,
              could
                  + "the file or its folder is read-only. Nothing was stored; it needs the right to"
                  + " write both.",
              e);
      case SQLITE_FULL ->
          unavailable(
              Reason.FULL,
              could
                  + "the disk is full. Nothing was stored, and what was stored before is unharmed;"
                  + " make room and try again.",
              e);
      case SQLITE_CANTOPEN ->
          unavailable(
              Reason.NOT_REACHABLE,
              could
                  + "the file, or one SQLite keeps beside it, cannot be opened; the file and its"
                  + " folder must exist and be writable.",
              e);
      case SQLITE_IOERR ->
          unavailable(
              Reason.DISK_ERROR, could + "the disk answered with an error. Nothing was stored.", e);
      case SQLITE_CORRUPT, SQLITE_NOTADB ->
          new RecordDamagedException(
              could
                  + "a page of the file is damaged. Stop writing to it, keep a copy as it is, and go"
                  + " on from the newest copy that verifies.",
              e);
      default -> new IllegalStateException("unexpected answer of SQLite on " + attempt, e);
    };
  }

  /** Of a full disk SQLite says no more than that the file beside the record failed. */
  private SQLiteErrorCode plain(SQLiteErrorCode code) {
    boolean vague = code == SQLiteErrorCode.SQLITE_IOERR || code == SQLiteErrorCode.SQLITE_CANTOPEN;
    return vague && isFull() ? SQLiteErrorCode.SQLITE_FULL : code;
  }

  private boolean isFull() {
    try {
      return Files.getFileStore(file).getUsableSpace() < LEAST_ROOM_BYTES;
    } catch (IOException unknown) {
      return false;
    }
  }

  private RecordUnavailableException unavailable(Reason reason, String message, SQLException e) {
    return new RecordUnavailableException(reason, file, message, e);
  }

  private String seconds() {
    long milliseconds = lockWait.toMillis();
    return milliseconds % 1000 == 0
        ? Long.toString(milliseconds / 1000)
        : Double.toString(milliseconds / 1000.0);
  }
}
