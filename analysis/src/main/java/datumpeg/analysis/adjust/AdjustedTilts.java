package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.List;

/** Adjusted tilts in radians. Immutable. */
public final class AdjustedTilts {
  private final List<String> targets;
  private final Fit fit;

  AdjustedTilts(List<String> targets, Fit fit) {
    this.targets = targets;
    this.fit = fit;
  }

  /** Observations with residuals and tests; its parameters are the tilts by target. */
  public Fit fit() {
    return fit;
  }

  /** Targets in the order of their first reading. */
  public List<String> targets() {
    return targets;
  }

  /** Tilt of a target, corrected for what is known of the zero errors. */
  public Estimate tilt(String target) {
    return linearisedTilt(target).estimate();
  }

  /** As {@link #tilt}, to be combined with others. */
  public Linearised linearisedTilt(String target) {
    return fit.parameters().quantity(target);
  }

  /**
   * Best prediction of a meter's zero error in radians, from all readings that share it and from
   * its stated uncertainty, toward 0: two faces of one target alone give (r1 + r2) / 2 times s^2 /
   * (s^2 + u^2 / 2), s the stated uncertainty of the zero and u that of one reading.
   *
   * @param group the common part that stands for the zero error; it has the same effect on every
   *     reading that names it
   */
  public Estimate zeroError(String group) {
    Estimate units = fit.commonEffect(group);
    double effect =
        fit.observations().stream()
            .mapToDouble(observation -> observation.observation().effect(group))
            .filter(value -> value != 0)
            .findFirst()
            .orElse(0);
    return units.scaled(effect);
  }
}
