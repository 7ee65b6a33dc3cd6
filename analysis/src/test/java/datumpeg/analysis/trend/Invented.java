package datumpeg.analysis.trend;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.JobIdentity;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Invented outcomes for tests of trends and comparisons. */
public final class Invented {
  private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

  private Invented() {}

  public static JobIdentity job(String id, String crew, String site, String slabBy) {
    return new JobIdentity(
        id,
        "local",
        "Shed " + id,
        site,
        crew,
        slabBy,
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalInt.empty());
  }

  /** In millimetres, U = 2 mm at coverage 2, limits ±limit; none for a limit of 0. */
  public static Outcome outcome(String target, int round, double deviation, double limit) {
    return outcome(
        target,
        round,
        deviation,
        limit == 0
            ? Optional.empty()
            : Optional.of(
                new Limits(
                    OptionalDouble.of(-limit / 1000), OptionalDouble.of(limit / 1000), "invented")),
        false);
  }

  static Outcome outcome(
      String target, int round, double deviation, Optional<Limits> limits, boolean stale) {
    return new Outcome(
        "column-plumb",
        target,
        round,
        OutcomeUnit.MILLIMETRE,
        OptionalDouble.of(0),
        deviation / 1000,
        deviation / 1000,
        0.002,
        2,
        limits,
        limits.isPresent() ? OptionalDouble.of(0.5) : OptionalDouble.empty(),
        limits.map(l -> Verdict.UNDECIDED),
        stale,
        "",
        "",
        List.of());
  }

  /** Taken so many days after the start, with one meter. */
  public static DatedOutcome dated(JobIdentity job, int day, String meter, Outcome outcome) {
    return new DatedOutcome(job, "lift", outcome, START.plus(day, ChronoUnit.DAYS), List.of(meter));
  }
}
