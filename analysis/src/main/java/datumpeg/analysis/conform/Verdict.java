package datumpeg.analysis.conform;

import java.util.Locale;

/** What can be said of a value against its limits, given its uncertainty (ISO 14253-1 words). */
public enum Verdict {
  CONFORMING,
  NONCONFORMING,
  UNDECIDED;

  public String text() {
    return name().toLowerCase(Locale.ROOT);
  }
}
