package datumpeg.bridge.frame;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/**
 * Reads the bytes of a line as text without being told the encoding.
 *
 * <p>Valid UTF-8 is read as such. Anything else is read byte by byte: 0xB0 (ISO 8859-1) and 0xF8
 * (code page 437) both as the degree sign, 0xA0 to 0xFF otherwise as ISO 8859-1, 0x80 to 0x9F as
 * U+FFFD, "not readable". The letter ø of ISO 8859-1 is therefore read as a degree sign; where a
 * number stands before it, that is what a meter means by it.
 */
public final class LineText {
  /** What stands for a byte that is no character. */
  static final char UNREADABLE = '\uFFFD';

  private static final char DEGREE = '\u00B0';

  private LineText() {}

  /** The text of these bytes; total. */
  public static String of(Bytes bytes) {
    if (isAscii(bytes)) { // nearly every line, and several times faster than a decoder
      return new String(bytes.toArray(), StandardCharsets.US_ASCII);
    }
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(bytes.toArray()))
          .toString();
    } catch (CharacterCodingException notUtf8) {
      return byteByByte(bytes);
    }
  }

  private static boolean isAscii(Bytes bytes) {
    for (int index = 0; index < bytes.length(); index++) {
      if (bytes.at(index) >= 0x80) {
        return false;
      }
    }
    return true;
  }

  private static String byteByByte(Bytes bytes) {
    StringBuilder text = new StringBuilder(bytes.length());
    for (int index = 0; index < bytes.length(); index++) {
      text.append(character(bytes.at(index)));
    }
    return text.toString();
  }

  private static char character(int value) {
    if (value == 0xF8) {
      return DEGREE;
    }
    return value >= 0x80 && value < 0xA0 ? UNREADABLE : (char) value;
  }
}
