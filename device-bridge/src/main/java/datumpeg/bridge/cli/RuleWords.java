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
      if (Double.isInfinite(constant.upper())) {
        return "at least " + millimetres(constant.lower());
      }
      if (Double.isInfinite(constant.lower())) {
        return "at most " + millimetres(constant.upper());
      }
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
    if (rule instanceof LimitRule.Formula formula) {
      return formula.text() + " mm, L in m";
    }
    if (rule instanceof LimitRule.Steps steps) {
      return steps(steps);
    }
    return ((LimitRule.Pieces) rule)
        .pieces().stream().map(RuleWords::piece).collect(Collectors.joining("; "));
  }

  private static String steps(LimitRule.Steps rule) {
    boolean linear = rule.interpolation() == LimitRule.Interpolation.LINEAR;
    return rule.steps().stream()
            .map(step -> step(step, linear ? "at " : "up to "))
            .collect(Collectors.joining("; "))
        + (linear ? "; linear between" : "; not interpolated")
        + (rule.roundedToMetres() > 0
            ? ", to whole " + millimetres(rule.roundedToMetres()).replaceFirst("^1 ", "")
            : "");
  }

  private static String step(LimitRule.Step step, String where) {
    return (Double.isInfinite(step.sizeMetres())
            ? "beyond: "
            : where + plain(step.sizeMetres()) + " m: ")
        + millimetres(step.limitMetres());
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
