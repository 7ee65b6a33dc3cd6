package datumpeg.bridge.cli;

import datumpeg.analysis.conform.LimitRule;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.stream.Collectors;

/** The rule of a limit in a few words. */
final class RuleWords {
  private RuleWords() {}

  static String of(LimitRule rule) {
    if (rule instanceof LimitRule.Constant constant) {
      return constant.lower() == -constant.upper()
          ? "±" + millimetres(constant.upper())
          : millimetres(constant.lower()) + " to +" + millimetres(constant.upper());
    }
    if (rule instanceof LimitRule.Ratio ratio) {
      return "size / "
          + plain(ratio.ratio())
          + (ratio.capMetres().isPresent()
              ? ", at most " + millimetres(ratio.capMetres().getAsDouble())
              : "");
    }
    return ((LimitRule.Pieces) rule)
        .pieces().stream().map(RuleWords::piece).collect(Collectors.joining("; "));
  }

  static String millimetres(double metres) {
    return plain(metres * 1000) + " mm";
  }

  private static String piece(LimitRule.Piece piece) {
    String range =
        Double.isInfinite(piece.upToMetres())
            ? "beyond: "
            : "up to " + plain(piece.upToMetres()) + " m: ";
    return range
        + millimetres(piece.constantMetres())
        + (piece.perMetre() == 0 ? "" : " + " + millimetres(piece.perMetre()) + " per m");
  }

  private static String plain(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return rounded.toPlainString();
  }
}
