package datumpeg.desktop.text;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.quantity.LengthDisplay;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;

/** How numbers are written on screen: a true minus sign, one decimal of a millimetre. */
public final class Figures {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private Figures() {}

  /** The size the plan asks for, or an empty text. */
  public static String nominal(Outcome outcome) {
    OptionalDouble nominal = outcome.nominal();
    return nominal.isPresent() ? size(outcome.unit(), nominal.getAsDouble()) : "";
  }

  public static String measured(Outcome outcome) {
    return size(outcome.unit(), outcome.measured());
  }

  public static String deviation(Outcome outcome) {
    return signed(outcome.unit().fromSi(outcome.deviation())) + " " + outcome.unit().symbol();
  }

  /** The deviation with its expanded uncertainty, such as {@code +18.8 ±1.4 mm}. */
  public static String deviationWithUncertainty(Outcome outcome) {
    return signed(outcome.unit().fromSi(outcome.deviation())) + " " + uncertainty(outcome);
  }

  /** The expanded uncertainty, such as {@code ±2.1 mm}. */
  public static String uncertainty(Outcome outcome) {
    return "±" + size(outcome.unit(), outcome.expandedUncertainty());
  }

  /** The limits of deviation, or an empty text where the job gives none. */
  public static String limits(Outcome outcome) {
    return outcome.limits().map(limits -> limits(outcome.unit(), limits)).orElse("");
  }

  private static String limits(OutcomeUnit unit, Limits limits) {
    String upper = bound(unit, limits.upper());
    String lower = bound(unit, limits.lower());
    if (lower.isEmpty() || upper.isEmpty()) {
      return lower.isEmpty()
          ? "≤ " + upper.replace("+", "") + " " + unit.symbol()
          : "≥ " + lower + " " + unit.symbol();
    }
    boolean even = lower.substring(1).equals(upper.substring(1)) && lower.startsWith("−");
    return (even ? "±" + upper.substring(1) : lower + " … " + upper) + " " + unit.symbol();
  }

  private static String bound(OutcomeUnit unit, OptionalDouble si) {
    if (si.isEmpty()) {
      return "";
    }
    String text = signed(unit.fromSi(si.getAsDouble()));
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }

  /** The conformance probability in per cent, or an empty text where there are no limits. */
  public static String probability(Outcome outcome) {
    if (outcome.probability().isEmpty()) {
      return "";
    }
    double percent = outcome.probability().getAsDouble() * 100;
    if (percent < 0.1) {
      return "< 0.1 %";
    }
    return percent > 99.9 ? "> 99.9 %" : LengthDisplay.decimal(percent, 1) + " %";
  }

  /** A number with its sign and one decimal; exactly nothing has no sign. */
  public static String signed(double value) {
    return LengthDisplay.signed(value, 1).replace('-', '−');
  }

  /** A whole number without a sign, for a drawing. */
  public static String whole(double value) {
    return LengthDisplay.decimal(Math.abs(value), 0);
  }

  /** A whole number with its sign, for a drawing. */
  public static String signedWhole(double value) {
    return LengthDisplay.signed(value, 0).replace('-', '−');
  }

  /** How many times too large something is drawn. */
  public static String factor(double factor) {
    return LengthDisplay.decimal(factor, 0);
  }

  /** A number without needless zeros, for an axis. */
  public static String tick(double value) {
    String text = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    return (value > 0 ? "+" + text : text).replace('-', '−');
  }

  public static String minute(Instant at, ZoneId zone) {
    return MINUTE.format(at.atZone(zone));
  }

  public static String second(Instant at, ZoneId zone) {
    return SECOND.format(at.atZone(zone));
  }

  private static String size(OutcomeUnit unit, double si) {
    return LengthDisplay.decimal(unit.fromSi(si), 1).replace('-', '−') + " " + unit.symbol();
  }
}
