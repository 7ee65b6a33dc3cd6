package datumpeg.bridge.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.List;

/** The serial ports of this machine as they are now. */
public final class SerialPorts {
  private SerialPorts() {}

  /**
   * One port.
   *
   * @param path how a link names it
   * @param description what the machine calls it
   */
  public record Found(String path, String description) {}

  /** The ports, by path. */
  public static List<Found> list() {
    SerialNatives.prepare();
    return Arrays.stream(SerialPort.getCommPorts())
        .map(port -> new Found(pathOf(port), port.getDescriptivePortName()))
        .sorted((one, other) -> one.path().compareTo(other.path()))
        .toList();
  }

  static List<String> paths() {
    return list().stream().map(Found::path).toList();
  }

  private static String pathOf(SerialPort port) {
    return SerialOpening.isWindows() ? port.getSystemPortName() : port.getSystemPortPath();
  }
}
