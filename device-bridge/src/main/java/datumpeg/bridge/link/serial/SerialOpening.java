package datumpeg.bridge.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.SerialSettings;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Opens ports for this program alone. */
final class SerialOpening {
  private SerialOpening() {}

  static SerialPort open(LinkAddress.Serial address) {
    SerialNatives.prepare();
    String path = address.path();
    // The library would look for the last part of a missing path in /dev and open that instead.
    if (!isWindows() && !Files.exists(Path.of(path))) {
      throw SerialRefusal.missing(path, SerialPorts.paths());
    }
    SerialPort port = port(path);
    apply(address.settings(), port);
    if (port.openPort()) {
      return port;
    }
    int error = port.getLastErrorCode();
    throw isWindows()
        ? SerialRefusal.windows(path, error, SerialPorts.paths())
        : SerialRefusal.posix(path, error);
  }

  private static SerialPort port(String path) {
    try {
      return SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException invalid) {
      throw SerialRefusal.missing(path, SerialPorts.paths());
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

  static boolean isWindows() {
    return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
  }
}
