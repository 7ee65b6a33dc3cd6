package datumpeg.bridge.collect;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import java.util.List;

/**
 * What a live value of a target says beside its limits. Immutable.
 *
 * @param limitMetres the strictest limit the target serves; not a number if it has none
 * @param uncertaintyMetres expanded uncertainty (k = 2) of one reading, by the job's meter
 * @param heightMetres over which a tilt is told as a lean
 */
public record LiveDeviation(
    Wanted wanted, double limitMetres, double uncertaintyMetres, double heightMetres) {
  private static final double COVERAGE = 2;

  /** By the job's one meter of the kind, else by what is assumed of such a meter. */
  public static LiveDeviation of(Job job, HoldRule rule, Wanted wanted) {
    MeasuredQuantity quantity = wanted.target().quantity();
    double height = job.setOut().building().columnHeightMetres();
    List<Meter> meters =
        job.meters().values().stream().filter(meter -> meter.quantity() == quantity).toList();
    MeterAccuracy accuracy =
        (meters.size() == 1 ? meters.get(0) : Meter.assumed("", quantity)).accuracy();
    double scaled = accuracy.perMetre() * wanted.expectedSi().orElse(0);
    double standard =
        Math.sqrt(
            accuracy.independentVariance()
                + accuracy.common() * accuracy.common()
                + scaled * scaled);
    double metres =
        quantity == MeasuredQuantity.TILT ? StrictMath.tan(standard) * height : standard;
    return new LiveDeviation(
        wanted, rule.limitMetres(wanted.target()).orElse(Double.NaN), COVERAGE * metres, height);
  }

  /** Whether there is a plan and a limit to hold the value against. */
  public boolean isBounded() {
    return limitMetres > 0 && wanted.expectedSi().isPresent();
  }

  /** The limit less its uncertainty; zero or less where the meter cannot decide it. */
  public double insideMetres() {
    return limitMetres - uncertaintyMetres;
  }

  /** Whether a deviation is inside the limit for sure; false where there is none. */
  public boolean isInside(double deviationMetres) {
    return isBounded() && Math.abs(deviationMetres) <= insideMetres();
  }

  /** Off the plan; for a tilt the lean over the column's height. */
  public double deviationMetres(double valueSi) {
    double off = valueSi - wanted.expectedSi().orElse(0);
    return wanted.target().quantity() == MeasuredQuantity.TILT
        ? StrictMath.tan(off) * heightMetres
        : off;
  }
}
