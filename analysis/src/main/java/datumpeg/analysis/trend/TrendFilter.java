package datumpeg.analysis.trend;

import java.time.Instant;
import java.util.Optional;

/**
 * Which outcomes a series is made of. An empty text leaves its matter open.
 *
 * @param check the check's name
 * @param target the target itself; or a text that begins with / for all that end so, such as
 *     /across
 * @param from taken at this moment or later
 * @param before taken earlier than this
 */
public record TrendFilter(
    String check,
    String target,
    String stage,
    String crew,
    String site,
    String meter,
    String slabBy,
    Optional<Instant> from,
    Optional<Instant> before) {

  /** All outcomes of a check. */
  public static TrendFilter of(String check) {
    return new TrendFilter(check, "", "", "", "", "", "", Optional.empty(), Optional.empty());
  }

  /** The same for another check. */
  public TrendFilter withCheck(String other) {
    return new TrendFilter(other, target, stage, crew, site, meter, slabBy, from, before);
  }

  /** Whether an outcome belongs to it. */
  public boolean passes(DatedOutcome one) {
    return fits(check, one.outcome().check())
        && passesTarget(one.outcome().target())
        && fits(stage, one.stage())
        && fits(crew, one.job().crew())
        && fits(site, one.job().site())
        && fits(slabBy, one.job().slabBy())
        && (meter.isEmpty() || one.meters().contains(meter))
        && from.map(start -> !one.at().isBefore(start)).orElse(true)
        && before.map(end -> one.at().isBefore(end)).orElse(true);
  }

  private boolean passesTarget(String found) {
    return target.startsWith("/") ? found.endsWith(target) : fits(target, found);
  }

  private static boolean fits(String wanted, String found) {
    return wanted.isEmpty() || wanted.equals(found);
  }
}
