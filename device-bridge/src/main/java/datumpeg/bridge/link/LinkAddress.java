package datumpeg.bridge.link;

import java.nio.file.Path;

/**
 * How a person names a link: {@code serial:PATH[?baud=9600&bits=8&parity=n&stop=1]}, {@code
 * replay:FILE} or {@code keyboard:}.
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
