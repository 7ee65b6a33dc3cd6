package datumpeg.bridge.frame.modbus;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import datumpeg.bridge.frame.gatt.GattDecoding;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;

/**
 * Reads the number in the registers that one poll answered. Total. Immutable.
 *
 * <p>The numbers are those of a characteristic's value, most significant byte first; so they are
 * turned round and read by {@link GattDecoding}.
 */
public final class RegisterDecoding {
  private final WordOrder order;
  private final int byteCount;
  private final GattDecoding number;

  /**
   * @param format of 2, 4 or 8 bytes
   * @param exponent an integer times ten to this is the value in the unit
   * @throws IllegalArgumentException for a format that does not fill whole registers
   */
  public RegisterDecoding(GattFormat format, WordOrder order, int exponent, Unit unit) {
    if (format.byteCount() == 0 || format.byteCount() % 2 != 0) {
      throw new IllegalArgumentException(
          "registers hold numbers of 2, 4, 6 or 8 bytes; " + format.word() + " has none of these");
    }
    this.order = order;
    this.byteCount = format.byteCount();
    this.number = new GattDecoding(new PresentationFormat(format, exponent, unit));
  }

  /** How many registers hold the number. */
  public int registerCount() {
    return byteCount / 2;
  }

  /** What the registers' bytes are, as the answer carried them. */
  public Decoded decode(Bytes registers) {
    if (registers.length() != byteCount) {
      return new NotAReading(
          Reason.MALFORMED,
          "the answer has " + registers.length() + " bytes; expected " + byteCount);
    }
    return number.decode(order.mostSignificantFirst(registers).reversed());
  }
}
