package datumpeg.bridge.frame.gatt;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import java.util.Optional;

/**
 * What a characteristic says of its own values: the seven bytes of descriptor 0x2904.
 *
 * @param format how the bytes are read
 * @param exponent an integer value times ten to this is the value in the unit
 * @param unit of length or angle
 */
public record PresentationFormat(GattFormat format, int exponent, Unit unit) {
  private static final int BYTE_COUNT = 7;

  /**
   * What seven bytes say: format (1), exponent (1, signed), unit (2), name space (1), description
   * (2). Bluetooth Core Specification, volume 3, part G, 3.3.3.5. Empty where they say nothing a
   * length or an angle can be read by.
   */
  public static Optional<PresentationFormat> of(Bytes descriptor) {
    if (descriptor.length() != BYTE_COUNT) {
      return Optional.empty();
    }
    int unit = descriptor.at(2) | descriptor.at(3) << 8;
    int exponent = (byte) descriptor.at(1);
    return GattFormat.ofCode(descriptor.at(0))
        .flatMap(
            format -> unit(unit).map(found -> new PresentationFormat(format, exponent, found)));
  }

  /**
   * The unit with this assigned number. Metre, radian and degree as in the Bluetooth SIG's Assigned
   * Numbers, "Units"; inch and foot from memory: verify against your copy.
   */
  private static Optional<Unit> unit(int number) {
    return switch (number) {
      case 0x2701 -> Optional.of(Unit.METRE);
      case 0x2720 -> Optional.of(Unit.RADIAN);
      case 0x2763 -> Optional.of(Unit.DEGREE);
      case 0x27A2 -> Optional.of(Unit.INCH);
      case 0x27A3 -> Optional.of(Unit.FOOT);
      default -> Optional.empty();
    };
  }
}
