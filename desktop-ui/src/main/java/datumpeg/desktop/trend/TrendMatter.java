package datumpeg.desktop.trend;

import java.util.Locale;

/** What can be chosen for a trend over jobs. Where nothing is chosen all is meant, or the first. */
enum TrendMatter {
  CHECK,
  TARGET,
  CREW,
  SITE,
  METER,
  SLAB,
  ROUNDS,
  PER,
  SCALE,
  CHART,
  RULES;

  /** The end of its keys in the resource bundle. */
  String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
