package datumpeg.analysis.building;

/** How the lower end of a rafter is cut: decides which corner of it is the outermost. */
public enum RafterEnd {
  /** Cut at a right angle to the rafter: the top corner is the outermost. */
  SQUARE,
  /** Cut plumb: both corners are equally far out. */
  PLUMB
}
