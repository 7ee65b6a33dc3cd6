package datumpeg.bridge.frame.modbus;

import datumpeg.bridge.frame.Bytes;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * How the bytes of a number are laid into registers of two bytes. The letters name the bytes from
 * the most significant on; makers differ, so it is a setting (common practice, no source).
 */
public enum WordOrder {
  /** Most significant word first, most significant byte first: the protocol's own order. */
  ABCD(false, false),
  /** Least significant word first. */
  CDAB(true, false),
  /** Most significant word first, its bytes swapped. */
  BADC(false, true),
  /** Least significant byte first throughout. */
  DCBA(true, true);

  private final boolean wordsReversed;
  private final boolean bytesSwapped;

  WordOrder(boolean wordsReversed, boolean bytesSwapped) {
    this.wordsReversed = wordsReversed;
    this.bytesSwapped = bytesSwapped;
  }

  /** How profiles name it: the lower-case letters. */
  public static Optional<WordOrder> named(String word) {
    return Arrays.stream(values()).filter(order -> order.word().equals(word)).findFirst();
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The bytes of whole registers, least significant first. */
  public Bytes leastSignificantFirst(Bytes registers) {
    return mostSignificantFirst(registers).reversed();
  }

  /** The bytes of whole registers, most significant first. */
  Bytes mostSignificantFirst(Bytes registers) {
    byte[] ordered = new byte[registers.length()];
    int words = registers.length() / 2;
    for (int word = 0; word < words; word++) {
      int from = 2 * (wordsReversed ? words - 1 - word : word);
      ordered[2 * word] = (byte) registers.at(bytesSwapped ? from + 1 : from);
      ordered[2 * word + 1] = (byte) registers.at(bytesSwapped ? from : from + 1);
    }
    return Bytes.of(ordered);
  }
}
