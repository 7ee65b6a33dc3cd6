package datumpeg.bridge.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import datumpeg.bridge.link.SerialSettings;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Opens ports, and says in a sentence why one could not be opened. */
final class SerialOpening {
  // Error numbers of POSIX.1-2017 <errno.h> with the values Linux and macOS give them.
  private static final int ENOENT = 2;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int EAGAIN_LINUX = 11;
  private static final int EAGAIN_MACOS = 35;

  private SerialOpening() {}

  static SerialPort open(LinkAddress.Serial address) {
    SerialNatives.prepare();
    String path = address.path();
    boolean windows = isWindows();
    if (!windows && !Files.exists(Path.of(path))) {
      throw missing(path);
    }
    SerialPort port = port(path);
    apply(address.settings(), port);
    if (port.openPort()) {
      return port;
    }
    throw refused(path, port.getLastErrorCode(), windows);
  }

  private static SerialPort port(String path) {
    try {
      return SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException invalid) {
      throw missing(path);
    }
  }

  private static void apply(SerialSettings settings, SerialPort port) {
    int stopBits =
        switch (settings.stopBits()) {
          case ONE -> SerialPort.ONE_STOP_BIT;
          case ONE_AND_A_HALF -> SerialPort.ONE_POINT_FIVE_STOP_BITS;
          case TWO -> SerialPort.TWO_STOP_BITS;
        };
    int parity =
        switch (settings.parity()) {
          case NONE -> SerialPort.NO_PARITY;
          case EVEN -> SerialPort.EVEN_PARITY;
          case ODD -> SerialPort.ODD_PARITY;
          case MARK -> SerialPort.MARK_PARITY;
          case SPACE -> SerialPort.SPACE_PARITY;
        };
    port.setComPortParameters(settings.baud(), settings.dataBits(), stopBits, parity);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
  }

  private static LinkUnavailableException missing(String path) {
    List<String> ports = SerialPorts.paths();
    String known =
        ports.isEmpty()
            ? "this machine has no serial port now"
            : "this machine has " + String.join(", ", ports);
    return new LinkUnavailableException(
        Obstacle.MISSING, "There is no serial port " + path + "; " + known + ".");
  }

  private static LinkUnavailableException refused(String path, int error, boolean windows) {
    boolean denied = windows ? false : error == EACCES;
    if (denied) {
      return new LinkUnavailableException(
          Obstacle.NOT_PERMITTED,
          ("The serial port %s may not be opened by this user: on Linux the user must be in the group"
                  + " dialout (sudo usermod -aG dialout USER, then log in again).")
              .formatted(path));
    }
    if (isBusy(error, windows)) {
      return new LinkUnavailableException(
          Obstacle.BUSY,
          "The serial port %s is in use by another program; close that one first.".formatted(path));
    }
    if (error == ENOENT) {
      return missing(path);
    }
    return new LinkUnavailableException(
        Obstacle.REFUSED,
        "The serial port %s could not be opened with its settings (system error %d)."
            .formatted(path, error));
  }

  private static boolean isBusy(int error, boolean windows) {
    // Windows: ERROR_ACCESS_DENIED (5) is what a port opened elsewhere answers.
    return windows ? error == 5 : error == EBUSY || error == EAGAIN_LINUX || error == EAGAIN_MACOS;
  }

  static boolean isWindows() {
    return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
  }
}
