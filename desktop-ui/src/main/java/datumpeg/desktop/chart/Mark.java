package datumpeg.desktop.chart;

/** How a point is drawn. The outlines differ, so that none depends on its colour. */
public enum Mark {
  /** A point of which nothing is to be said: a full disc. */
  PLAIN,
  /** A point in a run that a rule found: an open square. */
  IN_A_RUN,
  /** A point beyond a control limit: a full lozenge, larger. */
  BEYOND,
  /** The mean of some points: a ring. */
  MEAN
}
