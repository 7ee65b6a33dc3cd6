package datumpeg.bridge.link.ble.tinyb;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** Reads lines of bounded length; what is longer is left out. One thread. */
final class LineReader {
  private static final int LONGEST = 16_384;

  private final InputStream in;
  private final byte[] line = new byte[LONGEST];

  LineReader(InputStream in) {
    this.in = in;
  }

  /** The next line of at most the longest length; null at the end. */
  @Nullable String next() throws IOException {
    int length = 0;
    for (int one = in.read(); one >= 0; one = in.read()) {
      if (one == '\n') {
        if (length <= LONGEST) {
          return new String(line, 0, length, StandardCharsets.UTF_8);
        }
        length = 0;
      } else if (length < LONGEST) {
        line[length++] = (byte) one;
      } else {
        length = LONGEST + 1;
      }
    }
    return null;
  }
}
