package datumpeg.bridge.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class ByteRowsTest {
  @Test
  void aRowHasSixteenBytesAndTheLastIsPadded() {
    List<String> rows =
        ByteRows.of(Bytes.of("0123456789abcdef\r\n".getBytes(StandardCharsets.US_ASCII)));
    assertEquals(
        List.of(
            "30 31 32 33 34 35 36 37 38 39 61 62 63 64 65 66  0123456789abcdef",
            "0d 0a " + " ".repeat(43) + ".."),
        rows);
  }

  @Test
  void noBytesMakeNoRow() {
    assertEquals(List.of(), ByteRows.of(Bytes.empty()));
  }

  @Test
  void noByteReachesTheTerminalExceptAsPlainText() {
    byte[] all = new byte[256];
    for (int value = 0; value < all.length; value++) {
      all[value] = (byte) value;
    }
    String shown = String.join("", ByteRows.of(Bytes.of(all)));
    assertTrue(shown.chars().allMatch(character -> character >= 0x20 && character <= 0x7E), shown);
    assertTrue(shown.contains("1b"), shown);
  }
}
