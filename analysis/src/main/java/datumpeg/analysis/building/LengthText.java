package datumpeg.analysis.building;

import java.math.BigDecimal;

/** Numbers in this room's messages. */
final class LengthText {
  private LengthText() {}

  static String millimetres(double metres) {
    if (!Double.isFinite(metres)) {
      return metres + " m";
    }
    return plain(StrictMath.rint(metres * 1e6) / 1000) + " mm";
  }

  static String degrees(double radians) {
    return plain(StrictMath.rint(StrictMath.toDegrees(radians) * 1e6) / 1e6) + " deg";
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
