package datumpeg.bridge.jobfile;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Lengths in messages. */
final class Millimetres {
  private Millimetres() {}

  /** To a thousandth of a millimetre, without needless zeros. */
  static String text(double metres) {
    BigDecimal value =
        BigDecimal.valueOf(metres * 1000).setScale(3, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return value.toPlainString() + " mm";
  }
}
