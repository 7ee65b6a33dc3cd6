package datumpeg.bridge.link;

import java.nio.file.Path;

/**
 * How a person names a link: {@code serial:PATH[?baud=9600&bits=8&parity=n&stop=1]}, {@code
 * ble:ADDRESS[?adapter=hci0&backend=bluez|tinyb]}, {@code replay:FILE} or {@code keyboard:}.
 */
public sealed interface LinkAddress {

  /**
   * Reads an address.
   *
   * @throws datumpeg.bridge.failure.InputException if it is not one; the message names what is
   *     wrong and the nearest right word
   */
  static LinkAddress parse(String text) {
    return LinkAddressParser.parse(text);
  }

  /** The address in its shortest form; {@link #parse} reads it back. */
  String text();

  /**
   * A serial port.
   *
   * @param path the port's device, for instance {@code /dev/ttyUSB0} or {@code COM3}
   * @param settings of the line
   */
  record Serial(String path, SerialSettings settings) implements LinkAddress {
    @Override
    public String text() {
      return LinkAddressParser.serialText(this);
    }
  }

  /**
   * A Bluetooth Low Energy meter.
   *
   * @param device its address: six pairs of capital hexadecimal digits with colons
   * @param adapter this machine's radio, for instance {@code hci0}; empty for the first there is
   * @param backend by which it is reached
   */
  record Ble(String device, String adapter, Backend backend) implements LinkAddress {

    /** A way of reaching Bluetooth LE meters, with the word an address writes. */
    public enum Backend {
      /** The system's Bluetooth service, spoken to in Java. */
      BLUEZ("bluez"),
      /** The same service by way of a native library, in a process of its own. */
      TINYB("tinyb");

      private final String word;

      Backend(String word) {
        this.word = word;
      }

      public String word() {
        return word;
      }
    }

    public Ble {
      if (!device.matches("[0-9A-F]{2}(:[0-9A-F]{2}){5}")) {
        throw new IllegalArgumentException(
            "a Bluetooth address is six pairs of capital hexadecimal digits, found " + device);
      }
    }

    @Override
    public String text() {
      return BleAddressText.write(this);
    }
  }

  /** A capture. */
  record Replay(Path file) implements LinkAddress {
    @Override
    public String text() {
      return "replay:" + file;
    }
  }

  /** Values typed by a person, or by a meter that acts as a keyboard. */
  record Keyboard() implements LinkAddress {
    @Override
    public String text() {
      return "keyboard:";
    }
  }
}
