package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** Bytes as a person writes them on a command line: text with \r, \n, \t, \\ and \xHH in it. */
final class CommandText {
  private CommandText() {}

  /**
   * @throws InputException if a backslash stands before something else
   */
  static Bytes bytes(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int index = 0;
    while (index < text.length()) {
      if (text.charAt(index) == '\\') {
        index += escaped(text, index, bytes);
      } else {
        int end = text.indexOf('\\', index);
        end = end < 0 ? text.length() : end;
        bytes.writeBytes(text.substring(index, end).getBytes(StandardCharsets.UTF_8));
        index = end;
      }
    }
    return Bytes.of(bytes.toByteArray());
  }

  private static int escaped(String text, int index, ByteArrayOutputStream bytes) {
    char after = index + 1 < text.length() ? text.charAt(index + 1) : ' ';
    switch (after) {
      case 'r' -> bytes.write('\r');
      case 'n' -> bytes.write('\n');
      case 't' -> bytes.write('\t');
      case '\\' -> bytes.write('\\');
      case 'x' -> {
        bytes.writeBytes(hexadecimal(text, index + 2));
        return 4;
      }
      default -> throw wrong(text);
    }
    return 2;
  }

  private static byte[] hexadecimal(String text, int index) {
    try {
      return Bytes.ofHex(text.substring(index, Math.min(index + 2, text.length()))).toArray();
    } catch (IllegalArgumentException e) {
      throw wrong(text);
    }
  }

  private static InputException wrong(String text) {
    return new InputException(
        "The command '"
            + text
            + "' has a backslash that says nothing; expected \\r, \\n, \\t, \\\\"
            + " or \\x and two hexadecimal digits after it.");
  }
}
