package datumpeg.desktop.compare;

import java.util.Locale;

/** What can be chosen for a comparison. */
enum CompareMatter {
  FACTOR,
  CHECK,
  TARGET,
  CREW,
  SITE,
  METER,
  SLAB,
  ROUNDS,
  SCALE;

  /** The end of its key in the resource bundle. */
  String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
