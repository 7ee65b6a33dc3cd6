package datumpeg.bridge.collect;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.LengthDisplay;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * When a value is held and asked about: it is off what is expected by more than the larger of 50 mm
 * and five times the limit, the strictest of the checks it serves; for a tilt, what that is over
 * the column's height. Common practice, no source. Immutable.
 */
public final class HoldRule {
  private static final double LEAST_METRES = 0.05;
  private static final double LIMITS = 5;

  /** A metre dropped or added: so near to a whole number of metres. */
  private static final double NEAR_WHOLE_METRE = 0.05;

  private final Map<Target, Double> limitMetres;
  private final double columnHeightMetres;

  private HoldRule(Map<Target, Double> limitMetres, double columnHeightMetres) {
    this.limitMetres = Map.copyOf(limitMetres);
    this.columnHeightMetres = columnHeightMetres;
  }

  /** The rule for the targets of a stage, by the job's limits. */
  public static HoldRule of(Job job, Stage stage) {
    Map<Target, Double> limits = new HashMap<>();
    double height = job.setOut().building().columnHeightMetres();
    for (String check : stage.checks()) {
      Stage alone = new Stage(stage.id(), stage.title(), List.of(check), Map.of(), false);
      for (MeasuringList.Item item : MeasuringList.of(job.setOut(), alone).items()) {
        double size =
            item.target().quantity() == MeasuredQuantity.TILT
                ? height
                : item.expectedSi().orElse(0);
        limit(job, check, size).ifPresent(limit -> limits.merge(item.target(), limit, Math::min));
      }
    }
    return new HoldRule(limits, height);
  }

  private static Optional<Double> limit(Job job, String check, double sizeMetres) {
    int slash = check.indexOf('/');
    return job.tolerance(check)
        .or(() -> slash < 0 ? Optional.empty() : job.tolerance(check.substring(0, slash)))
        .flatMap(
            tolerance -> {
              double upper = tolerance.signed(sizeMetres).upper().orElse(Double.NaN);
              return upper > 0 ? Optional.of(upper) : Optional.empty();
            });
  }

  /** The strictest limit of the checks the target serves, in metres; empty where there is none. */
  public Optional<Double> limitMetres(Target target) {
    return Optional.ofNullable(limitMetres.get(target));
  }

  /** How far a value may be off before it is asked about; metres, or radians for a tilt. */
  public double thresholdSi(Target target) {
    double metres = Math.max(LEAST_METRES, LIMITS * limitMetres.getOrDefault(target, 0.0));
    return target.quantity() == MeasuredQuantity.TILT
        ? StrictMath.atan(metres / columnHeightMetres)
        : metres;
  }

  /** Whether a value need not be asked about. */
  public boolean fits(Wanted wanted, double valueSi) {
    return wanted.expectedSi().isEmpty()
        || Math.abs(valueSi - wanted.expectedSi().getAsDouble()) <= thresholdSi(wanted.target());
  }

  /** Why a value is asked about, in a sentence; empty if it need not be. */
  public Optional<String> doubt(Wanted wanted, double valueSi) {
    if (fits(wanted, valueSi)) {
      return Optional.empty();
    }
    double off = valueSi - wanted.expectedSi().orElse(valueSi);
    if (wanted.target().quantity() == MeasuredQuantity.TILT) {
      return Optional.of(
          "it leans "
              + LengthDisplay.decimal(StrictMath.tan(off) * columnHeightMetres * 1000, 0)
              + " mm over the column's height.");
    }
    String sense = off > 0 ? "more" : "less";
    long metres = Math.round(Math.abs(off));
    if (metres >= 1 && Math.abs(Math.abs(off) - metres) <= NEAR_WHOLE_METRE) {
      return Optional.of("it is about " + metres + " m " + sense + " than the plan says.");
    }
    return Optional.of(
        "it is "
            + LengthDisplay.decimal(Math.abs(off) * 1000, 0)
            + " mm "
            + sense
            + " than the plan says.");
  }
}
