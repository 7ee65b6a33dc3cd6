package datumpeg.analysis.building;

/** Where the wall rails run. */
public enum Girts {
  /** Outside the columns: their depth lies between the sheet and the column. */
  OUTSIDE,
  /** Between the columns: they add nothing to the column line offset. */
  BETWEEN
}
