package datumpeg.bridge.meter.learn;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;

/**
 * What makes a bare number a value: unit, power of ten, sign, zero.
 *
 * @param exponent the number times ten to this is the value in the unit
 */
record Scale(Unit unit, int exponent, Sign sign, AngleZero zero) {
  private static final int LEAST_EXPONENT = -6;
  private static final int MOST_EXPONENT = 3;

  /** The value of a number, in metres or radians. */
  double valueSi(double number) {
    double power = StrictMath.pow(10, Math.abs(exponent));
    double value = unit.toSi(exponent < 0 ? number / power : number * power);
    if (zero == AngleZero.LEVEL) {
      value -= StrictMath.copySign(StrictMath.PI / 2, value);
    }
    return sign == Sign.REVERSED ? -value : value;
  }

  /** The scales under which all numbers are what was displayed, one of each kind that differs. */
  static List<Scale> fitting(List<Double> numbers, List<Displayed> displayed) {
    return fitting(numbers, displayed, Displayed::fits);
  }

  /** As {@link #fitting(List, List)}, leaving the sign aside. */
  static List<Scale> fittingSizes(List<Double> numbers, List<Displayed> displayed) {
    return fitting(numbers, displayed, Displayed::fitsSize);
  }

  private static List<Scale> fitting(
      List<Double> numbers, List<Displayed> displayed, BiPredicate<Displayed, Double> fit) {
    List<Scale> fitting = new ArrayList<>();
    for (Scale scale : all(displayed.get(0))) {
      boolean fits = true;
      for (int i = 0; i < numbers.size() && fits; i++) {
        fits = fit.test(displayed.get(i), scale.valueSi(numbers.get(i)));
      }
      if (fits && fitting.stream().noneMatch(scale::isLike)) {
        fitting.add(scale);
      }
    }
    return fitting;
  }

  /** Millimetres and thousandths of a metre are one scale written twice. */
  private boolean isLike(Scale other) {
    double mine = valueSi(1);
    return sign == other.sign
        && zero == other.zero
        && Math.abs(other.valueSi(1) - mine) <= 1e-12 * Math.abs(mine);
  }

  /** Plain units first, the display's own before others. */
  private static List<Scale> all(Displayed displayed) {
    List<Scale> scales = new ArrayList<>();
    for (AngleZero zero : AngleZero.values()) {
      for (Sign sign : Sign.values()) {
        for (int exponent : exponents()) {
          for (Unit unit : units(displayed.unit())) {
            scales.add(new Scale(unit, exponent, sign, zero));
          }
        }
      }
      if (displayed.dimension() == Dimension.LENGTH) {
        return scales;
      }
    }
    return scales;
  }

  private static List<Integer> exponents() {
    List<Integer> exponents = new ArrayList<>(List.of(0));
    for (int e = LEAST_EXPONENT; e <= MOST_EXPONENT; e++) {
      if (e != 0) {
        exponents.add(e);
      }
    }
    return exponents;
  }

  /** The units a number alone can have, the displayed one first. */
  static List<Unit> units(Unit displayed) {
    List<Unit> units = new ArrayList<>();
    if (displayed != Unit.FOOT_AND_INCH) {
      units.add(displayed);
    }
    for (Unit unit : Unit.values()) {
      if (unit.dimension() == displayed.dimension()
          && unit != displayed
          && unit != Unit.FOOT_AND_INCH) {
        units.add(unit);
      }
    }
    return units;
  }
}
