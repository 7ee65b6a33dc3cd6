package datumpeg.analysis.check;

/**
 * How the readings could be made more certain; each scales the parts of their uncertainty. Reducing
 * once more as if one of these had been done tells what it would gain.
 */
public enum Improvement {
  /** As they were taken. */
  NONE(1, 1, 1, 1),
  /** Each reading the mean of very many: only what repeats cannot shrink is left. */
  REPEATS(1e-3, 1, 1, 1),
  /** The error a meter's readings share is known: both faces, a known distance, a second set-up. */
  METER_CHECKED(1, 1, 0, 1),
  /** The points are marked once and read to the mark. */
  POINTS_MARKED(1, 0, 1, 1),
  /** The temperature of the steel is read. */
  TEMPERATURE_READ(1, 1, 1, 0),
  /** A meter without errors. */
  OTHER_METER(0, 1, 0, 1);

  private final double scatter;
  private final double definition;
  private final double common;
  private final double temperature;

  Improvement(double scatter, double definition, double common, double temperature) {
    this.scatter = scatter;
    this.definition = definition;
    this.common = common;
    this.temperature = temperature;
  }

  double scatter() {
    return scatter;
  }

  double definition() {
    return definition;
  }

  double common() {
    return common;
  }

  double temperature() {
    return temperature;
  }
}
