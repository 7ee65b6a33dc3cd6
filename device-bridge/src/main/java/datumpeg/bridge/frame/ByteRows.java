package datumpeg.bridge.frame;

import java.util.ArrayList;
import java.util.List;

/**
 * Bytes as a person reads them: hexadecimal digits and beside them the text. Whatever a terminal
 * could take for a command is shown as a dot, so that no meter writes on the screen by itself.
 */
public final class ByteRows {
  private static final int BYTES_A_ROW = 16;
  private static final int FIRST_PRINTABLE = 0x20;
  private static final int LAST_PRINTABLE = 0x7E;

  private ByteRows() {}

  /** Rows of up to 16 bytes each; none for no bytes. */
  public static List<String> of(Bytes bytes) {
    List<String> rows = new ArrayList<>();
    for (int from = 0; from < bytes.length(); from += BYTES_A_ROW) {
      rows.add(row(bytes.slice(from, Math.min(bytes.length(), from + BYTES_A_ROW))));
    }
    return rows;
  }

  private static String row(Bytes bytes) {
    StringBuilder hex = new StringBuilder();
    StringBuilder text = new StringBuilder();
    for (int index = 0; index < BYTES_A_ROW; index++) {
      if (index < bytes.length()) {
        String digits = Integer.toHexString(0x100 | bytes.at(index)).substring(1);
        hex.append(digits).append(' ');
        text.append(printable(bytes.at(index)));
      } else {
        hex.append("   ");
      }
    }
    return hex.append(' ').append(text).toString();
  }

  private static char printable(int value) {
    return value >= FIRST_PRINTABLE && value <= LAST_PRINTABLE ? (char) value : '.';
  }
}
