package datumpeg.analysis.measuring;

import java.util.Locale;

/** A direction of lean or offset. */
public enum Axis {
  /** Along the building; positive toward the higher frame number. */
  ALONG,
  /** Across the building; positive toward side B. */
  ACROSS;

  private final String text = name().toLowerCase(Locale.ROOT);

  public String text() {
    return text;
  }
}
