package datumpeg.desktop.measure;

/** What is to be heard. Nothing is said by sound alone. Returns at once. */
interface Sounds {
  /** A value was taken, or stands inside its limit. */
  void accepted();

  /** A value is held, and something must be answered. */
  void held();
}
