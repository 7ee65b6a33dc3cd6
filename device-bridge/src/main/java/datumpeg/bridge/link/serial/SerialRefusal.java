package datumpeg.bridge.link.serial;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import java.util.List;

/** Turns what the system answered when a port was opened into a sentence. */
final class SerialRefusal {
  // POSIX <errno.h> names with the values that Linux and macOS give them.
  private static final int ENOENT = 2;
  private static final int EAGAIN_LINUX = 11;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int EISDIR = 21;
  private static final int ENOTTY = 25;
  private static final int EAGAIN_MACOS = 35;

  /** What Windows answers for a port that another program holds (ERROR_ACCESS_DENIED). */
  private static final int WINDOWS_ACCESS_DENIED = 5;

  private static final int WINDOWS_FILE_NOT_FOUND = 2;

  private SerialRefusal() {}

  static LinkUnavailableException missing(String path, List<String> present) {
    String known =
        present.isEmpty()
            ? "this machine has no serial port now"
            : "this machine has " + String.join(", ", present);
    return new LinkUnavailableException(
        Obstacle.MISSING, "There is no serial port " + path + "; " + known + ".");
  }

  /**
   * A refusal by a system of the POSIX kind, of a path that exists.
   *
   * <p>EAGAIN answers the exclusive {@code flock} that jSerialComm takes, EBUSY a port whose holder
   * has set TIOCEXCL. A second opening within this program never reaches the system: the library
   * refuses it with the number of an earlier call, ENOENT, which an existing path cannot mean.
   */
  static LinkUnavailableException posix(String path, int error) {
    return switch (error) {
      case EAGAIN_LINUX, EAGAIN_MACOS, EBUSY, ENOENT -> busy(path);
      case EACCES -> notPermitted(path);
      case ENOTTY, EISDIR ->
          new LinkUnavailableException(
              Obstacle.REFUSED, path + " is there, and it is not a serial port.");
      default -> other(path, error);
    };
  }

  static LinkUnavailableException windows(String path, int error, List<String> present) {
    return switch (error) {
      case WINDOWS_ACCESS_DENIED -> busy(path);
      case WINDOWS_FILE_NOT_FOUND -> missing(path, present);
      default -> other(path, error);
    };
  }

  private static LinkUnavailableException busy(String path) {
    return new LinkUnavailableException(
        Obstacle.BUSY,
        "The serial port %s is in use, here or by another program; close that one first."
            .formatted(path));
  }

  private static LinkUnavailableException notPermitted(String path) {
    return new LinkUnavailableException(
        Obstacle.NOT_PERMITTED,
        ("This user may not open the serial port %s; on Linux the user must be in the group dialout:"
                + " sudo usermod -aG dialout USER, then log in again.")
            .formatted(path));
  }

  private static LinkUnavailableException other(String path, int error) {
    return new LinkUnavailableException(
        Obstacle.REFUSED,
        "The serial port %s could not be opened with the settings given (system error %d)."
            .formatted(path, error));
  }
}
