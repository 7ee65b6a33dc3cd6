package datumpeg.bridge.meter.learn;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.GeneralTextLine;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * What a person read on the display.
 *
 * @param text as typed
 * @param unit of the number
 * @param siValue metres or radians
 * @param toleranceSi half a step of the last digit: the bytes may carry more digits than are shown
 */
public record Displayed(String text, Unit unit, double siValue, double toleranceSi) {
  /** Room for the last bit of a sum; half a step itself still fits. */
  private static final double ROUNDING = 1e-9;

  public Displayed {
    if (!Double.isFinite(siValue) || !(toleranceSi > 0)) {
      throw new IllegalArgumentException("a display shows a finite number, found " + text);
    }
  }

  /** Reads what was typed; empty if it is not one number with its unit. */
  public static Optional<Displayed> parse(String typed) {
    Optional<Measured> length = read(typed, Unit.METRE);
    Optional<Measured> angle = read(typed, Unit.DEGREE);
    boolean named = length.isPresent() && length.get().unit() == angle.orElseThrow().unit();
    return named ? length.map(measured -> of(typed, measured)) : Optional.empty();
  }

  private static Optional<Measured> read(String typed, Unit otherwise) {
    Bytes line = Bytes.of(typed.getBytes(StandardCharsets.UTF_8));
    return new GeneralTextLine(otherwise).decode(line) instanceof Measured measured
        ? Optional.of(measured)
        : Optional.empty();
  }

  private static Displayed of(String typed, Measured measured) {
    double value = Math.abs(measured.unit().fromSi(measured.siValue()));
    double half = halfStep(measured) + ROUNDING * value;
    double tolerance =
        measured.unit().toSi(value + half) - measured.unit().toSi(Math.max(0, value - half));
    return new Displayed(typed, measured.unit(), measured.siValue(), tolerance / 2 + 1e-15);
  }

  /** Half a step of the last digit, in the unit; of feet and inches, in feet. */
  private static double halfStep(Measured measured) {
    String text = measured.valueText();
    if (measured.unit() == Unit.FOOT_AND_INCH) {
      int slash = text.indexOf('/');
      int end = slash + 1;
      while (slash >= 0 && end < text.length() && Character.isDigit(text.charAt(end))) {
        end++;
      }
      double parts = slash < 0 ? 1 : Double.parseDouble(text.substring(slash + 1, end));
      return 0.5 / parts / 12;
    }
    int mark = Math.max(text.indexOf('.'), text.indexOf(','));
    int digits = mark < 0 ? 0 : text.length() - mark - 1;
    return 0.5 * StrictMath.pow(10, -digits);
  }

  Dimension dimension() {
    return unit.dimension();
  }

  /** Whether a value in metres or radians would be shown like this. */
  boolean fits(double value) {
    return Math.abs(value - siValue) <= toleranceSi * (1 + ROUNDING);
  }

  boolean fitsSize(double value) {
    return Math.abs(Math.abs(value) - Math.abs(siValue)) <= toleranceSi * (1 + ROUNDING);
  }
}
