package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.NotOurRecordException;
import datumpeg.bridge.record.NotOurRecordException.Found;
import datumpeg.bridge.record.RecordUnavailableException;
import datumpeg.bridge.record.RecordUnavailableException.Reason;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Looks at the first bytes of a file before SQLite does: opening a database of someone else's could
 * already change it. Layout: SQLite, "Database File Format", section 1.3: the magic text at 0, the
 * user version at 60, the application id at 68, each number four bytes, big-endian.
 */
final class FileHeader {
  private static final int LENGTH = 100;
  private static final int USER_VERSION = 60;
  private static final int APPLICATION_ID = 68;
  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private FileHeader() {}

  /**
   * @throws NotOurRecordException if the file is anything but empty, absent or a record of this
   *     version or an older one
   */
  static void requireOurs(Path file) {
    if (!Files.exists(file)) {
      return;
    }
    if (!Files.isRegularFile(file)) {
      throw new NotOurRecordException(
          Found.NOT_A_DATABASE, file + " is a folder or a device; expected the file of a record.");
    }
    byte[] header = firstBytes(file);
    if (header.length > 0) {
      requireDatabase(file, header);
      requireApplication(file, ByteBuffer.wrap(header).getInt(APPLICATION_ID));
      requireVersion(file, ByteBuffer.wrap(header).getInt(USER_VERSION));
    }
  }

  private static byte[] firstBytes(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(LENGTH);
    } catch (IOException e) {
      throw new RecordUnavailableException(
          Reason.NOT_REACHABLE, file, "Could not read the record " + file + ".", e);
    }
  }

  private static void requireDatabase(Path file, byte[] header) {
    if (header.length < LENGTH || !Arrays.equals(header, 0, MAGIC.length, MAGIC, 0, MAGIC.length)) {
      throw new NotOurRecordException(
          Found.NOT_A_DATABASE,
          file + " is not a record: found no SQLite database in it. Nothing in it was changed.");
    }
  }

  private static void requireApplication(Path file, int applicationId) {
    if (applicationId != Schema.APPLICATION_ID) {
      throw new NotOurRecordException(
          Found.ANOTHER_APPLICATION,
          String.format(
              "%s is a database of another program: found application id %d, expected %d. Nothing in"
                  + " it was changed.",
              file, applicationId, Schema.APPLICATION_ID));
    }
  }

  private static void requireVersion(Path file, int version) {
    if (version > Schema.VERSION) {
      throw new NotOurRecordException(
          Found.NEWER_VERSION,
          String.format(
              "The record %s is of version %d; this program knows versions up to %d. Nothing in it was"
                  + " changed; open it with the newer program.",
              file, version, Schema.VERSION));
    }
  }
}
