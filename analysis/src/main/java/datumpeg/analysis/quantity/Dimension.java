package datumpeg.analysis.quantity;

/** What kind of quantity a value is: decides which units fit it. */
public enum Dimension {
  /** Kept in metres. */
  LENGTH,
  /** Kept in radians. */
  ANGLE
}
