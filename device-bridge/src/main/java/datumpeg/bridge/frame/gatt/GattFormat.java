package datumpeg.bridge.frame.gatt;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * How the bytes of a characteristic's value are to be read, least significant byte first.
 *
 * <p>Codes: Bluetooth SIG, Assigned Numbers, "Format types" of the Characteristic Presentation
 * Format. Formats of less than a byte, of 12 or 128 bits, UTF-16 and structures are left out: no
 * meter of lengths or angles was met that uses them (common practice, no source).
 */
public enum GattFormat {
  UINT8(0x04, 1),
  UINT16(0x06, 2),
  UINT24(0x07, 3),
  UINT32(0x08, 4),
  UINT48(0x09, 6),
  UINT64(0x0A, 8),
  SINT8(0x0C, 1),
  SINT16(0x0E, 2),
  SINT24(0x0F, 3),
  SINT32(0x10, 4),
  SINT48(0x11, 6),
  SINT64(0x12, 8),
  /** IEEE 754, 32 bits. */
  FLOAT32(0x14, 4),
  /** IEEE 754, 64 bits. */
  FLOAT64(0x15, 8),
  /** IEEE 11073-20601, 16 bits. */
  MEDICAL16(0x16, 2),
  /** IEEE 11073-20601, 32 bits. */
  MEDICAL32(0x17, 4),
  /** Text in UTF-8, of any length. */
  UTF8(0x19, 0);

  private final int code;
  private final int byteCount;

  GattFormat(int code, int byteCount) {
    this.code = code;
    this.byteCount = byteCount;
  }

  /** The format with this assigned number. */
  public static Optional<GattFormat> ofCode(int code) {
    return Arrays.stream(values()).filter(format -> format.code == code).findFirst();
  }

  /** How profiles name it: the lower-case name. */
  public static Optional<GattFormat> named(String word) {
    return Arrays.stream(values()).filter(format -> format.word().equals(word)).findFirst();
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The assigned number. */
  public int code() {
    return code;
  }

  /** How many bytes a value has; 0 for any number. */
  public int byteCount() {
    return byteCount;
  }

  public boolean isInteger() {
    return code <= SINT64.code;
  }

  public boolean isSigned() {
    return code >= SINT8.code;
  }
}
