package datumpeg.analysis.building;

import java.util.Locale;

/** Which side of a column or rafter a point is on, along the building. */
public enum Face {
  /** The side toward the lower frame number. */
  LOW,
  /** The centre line; what is meant when no face is named. */
  MID,
  /** The side toward the higher frame number. */
  HIGH;

  /** How the face is written in a point's name. */
  public String text() {
    return name().toLowerCase(Locale.ROOT);
  }
}
