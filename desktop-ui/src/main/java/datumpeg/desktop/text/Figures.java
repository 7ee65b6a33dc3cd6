package datumpeg.desktop.text;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.report.writing.LengthFigures;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * How numbers are written on screen: a true minus sign, lengths in the user's units. Deviations are
 * in millimetres with one decimal, or in inches with two; sizes in millimetres, or in feet, inches
 * and fractions.
 *
 * <p>Immutable.
 */
public final class Figures {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private static final String INCH = new LengthFigures(LengthDisplay.IMPERIAL).unit();

  private final LengthFigures lengths;

  private Figures(LengthFigures lengths) {
    this.lengths = lengths;
  }

  /** Lengths in the user's units, as the drawings of the analysis write them. */
  public LengthFigures lengths() {
    return lengths;
  }

  public static Figures in(LengthDisplay units) {
    return new Figures(new LengthFigures(units));
  }

  /** The size the plan asks for, or an empty text. */
  public String nominal(Outcome outcome) {
    OptionalDouble nominal = outcome.nominal();
    return nominal.isPresent() ? size(outcome.unit(), nominal.getAsDouble()) : "";
  }

  public String measured(Outcome outcome) {
    return size(outcome.unit(), outcome.measured());
  }

  public String deviation(Outcome outcome) {
    return signedOf(outcome.unit(), outcome.deviation()) + " " + symbol(outcome.unit());
  }

  /** The deviation with its expanded uncertainty, such as {@code +18.8 ± 1.4 mm}. */
  public String deviationWithUncertainty(Outcome outcome) {
    return signedOf(outcome.unit(), outcome.deviation())
        + " "
        + uncertainty(outcome).replace("±", "± ");
  }

  /** The expanded uncertainty, such as {@code ±2.1 mm}. */
  public String uncertainty(Outcome outcome) {
    return "±"
        + signedOf(outcome.unit(), outcome.expandedUncertainty()).replace("+", "")
        + " "
        + symbol(outcome.unit());
  }

  /** The limits of deviation, or an empty text where the job gives none. */
  public String limits(Outcome outcome) {
    return outcome.limits().map(limits -> limits(outcome.unit(), limits)).orElse("");
  }

  /** A size in metres with its unit, such as {@code 8572.0 mm} or {@code 28' 1 1/2"}. */
  public String size(double metres) {
    return size(OutcomeUnit.MILLIMETRE, metres);
  }

  /** A deviation in metres with its sign and unit. */
  public String deviation(double metres) {
    return lengths.deviation(metres);
  }

  /** What deviations in this unit are shown in, such as {@code mm} or {@code in}. */
  public String symbol(OutcomeUnit unit) {
    return unit == OutcomeUnit.MILLIMETRE ? lengths.unit() : unit.symbol();
  }

  /** A number in the unit it is shown in. */
  public double shown(OutcomeUnit unit, double si) {
    boolean inches = unit == OutcomeUnit.MILLIMETRE && lengths.display() == LengthDisplay.IMPERIAL;
    return inches ? si / lengths.unitMetres() : unit.fromSi(si);
  }

  /** A length with its sign, given in the unit it is shown in, without that unit. */
  public String signedShown(double shown) {
    return lengths.signed(shown * lengths.unitMetres());
  }

  private String size(OutcomeUnit unit, double si) {
    if (unit != OutcomeUnit.MILLIMETRE) {
      return LengthDisplay.decimal(unit.fromSi(si), 1).replace('-', '−') + " " + unit.symbol();
    }
    boolean metric = lengths.display() == LengthDisplay.METRIC;
    return metric ? lengths.size(si) + " mm" : lengths.size(si);
  }

  private String signedOf(OutcomeUnit unit, double si) {
    return unit == OutcomeUnit.MILLIMETRE ? lengths.signed(si) : signed(unit.fromSi(si));
  }

  private String limits(OutcomeUnit unit, Limits limits) {
    String upper = bound(unit, limits.upper());
    String lower = bound(unit, limits.lower());
    if (lower.isEmpty() || upper.isEmpty()) {
      return lower.isEmpty()
          ? "≤ " + upper.replace("+", "") + " " + symbol(unit)
          : "≥ " + lower + " " + symbol(unit);
    }
    boolean even = lower.substring(1).equals(upper.substring(1)) && lower.startsWith("−");
    return (even ? "±" + upper.substring(1) : lower + " … " + upper) + " " + symbol(unit);
  }

  private String bound(OutcomeUnit unit, OptionalDouble si) {
    return si.isEmpty() ? "" : signedOf(unit, si.getAsDouble()).replaceFirst("\\.0+$", "");
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

  /** The same in the unit it is shown in: inches have two decimals, as everywhere. */
  public static String signed(double value, String unit) {
    int places = unit.equals(INCH) ? 2 : 1;
    return LengthDisplay.signed(value, places).replace('-', '−');
  }

  /** A limit at its line, such as {@code +10 mm}: without needless zeros. */
  public static String limit(double value, String unit) {
    String number = signed(value, unit);
    return (number.contains(".") ? number.replaceFirst("\\.?0+$", "") : number) + " " + unit;
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
}
