package datumpeg.analysis.building;

/** The shape of the roof. */
public enum Roof {
  /** Two slopes meeting at an apex in mid-span. */
  GABLE,
  /** One slope from side to side. */
  MONO
}
