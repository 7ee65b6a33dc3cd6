package datumpeg.bridge.cli;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.bridge.collect.HoldRule;
import datumpeg.bridge.collect.Wanted;
import java.util.List;

/**
 * What a live value of a target says beside its limits. Immutable.
 *
 * @param limitMetres the strictest limit the target serves; not a number if it has none
 * @param uncertaintyMetres expanded uncertainty (k = 2) of one reading, by the job's meter
 * @param heightMetres over which a tilt is told as a lean
 */
record LiveDeviation(
    Wanted wanted, double limitMetres, double uncertaintyMetres, double heightMetres) {
  private static final double COVERAGE = 2;

  static LiveDeviation of(Job job, HoldRule rule, Wanted wanted) {
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
  boolean isBounded() {
    return limitMetres > 0 && wanted.expectedSi().isPresent();
  }

  LimitBar bar() {
    return new LimitBar(limitMetres, uncertaintyMetres);
  }

  /** Off the plan; for a tilt the lean over the column's height. */
  double deviationMetres(double valueSi) {
    double off = valueSi - wanted.expectedSi().orElse(0);
    return wanted.target().quantity() == MeasuredQuantity.TILT
        ? StrictMath.tan(off) * heightMetres
        : off;
  }
}
