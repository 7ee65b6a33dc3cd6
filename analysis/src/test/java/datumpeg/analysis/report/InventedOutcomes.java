package datumpeg.analysis.report;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Outcomes written by hand, for invented findings. */
public final class InventedOutcomes {
  private InventedOutcomes() {}

  static void square(
      List<Outcome> outcomes, String corner, double value, Verdict verdict, double probability) {
    outcomes.add(
        outcome(
            "slab-square",
            corner,
            OptionalDouble.of(0),
            value,
            value,
            0.0021,
            limits(0.008, true),
            probability,
            verdict,
            "",
            List.of("D1", "D2", "D3", "D4", "D5", "D6")));
  }

  static Outcome plumb(String target, double lean, String reading) {
    double size = Math.abs(lean);
    Verdict verdict =
        size > 0.008
            ? Verdict.NONCONFORMING
            : size > 0.006 ? Verdict.UNDECIDED : Verdict.CONFORMING;
    double probability =
        switch (verdict) {
          case NONCONFORMING -> 0.0000004;
          case UNDECIDED -> 0.617;
          case CONFORMING -> 0.9996;
        };
    return outcome(
        "column-plumb",
        target,
        OptionalDouble.of(0),
        lean,
        lean,
        0.0019,
        Optional.of(
            new Limits(
                OptionalDouble.of(-0.0072),
                OptionalDouble.of(0.0072),
                "project specification, H/500 at most 25 mm, verify against your copy")),
        probability,
        verdict,
        "",
        List.of(reading));
  }

  static Outcome sized(
      String check,
      String target,
      double nominal,
      double deviation,
      String source,
      double limit,
      String reading) {
    boolean out = Math.abs(deviation) > limit;
    return outcome(
        check,
        target,
        OptionalDouble.of(nominal),
        nominal + deviation,
        deviation,
        0.0023,
        Optional.of(
            new Limits(OptionalDouble.of(-limit), OptionalDouble.of(limit), "job file, " + source)),
        out ? 0.0002 : 0.9999,
        out ? Verdict.NONCONFORMING : Verdict.CONFORMING,
        "",
        List.of(reading));
  }

  /** One outcome; without limits the probability is not looked at and the verdict is null. */
  public static Outcome outcome(
      String check,
      String target,
      OptionalDouble nominal,
      double measured,
      double deviation,
      double expandedUncertainty,
      Optional<Limits> limits,
      double probability,
      @org.jspecify.annotations.Nullable Verdict verdict,
      String remedy,
      List<String> readings) {
    return new Outcome(
        check,
        target,
        1,
        OutcomeUnit.MILLIMETRE,
        nominal,
        measured,
        deviation,
        expandedUncertainty,
        2,
        limits,
        limits.isPresent() ? OptionalDouble.of(probability) : OptionalDouble.empty(),
        Optional.ofNullable(verdict),
        false,
        remedy,
        "",
        readings);
  }

  static Optional<Limits> limits(double metres, boolean signed) {
    return Optional.of(
        new Limits(
            signed ? OptionalDouble.of(-metres) : OptionalDouble.empty(),
            OptionalDouble.of(metres),
            "job file"));
  }
}
