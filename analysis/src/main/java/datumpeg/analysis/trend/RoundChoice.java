package datumpeg.analysis.trend;

/** Which outcome of a target speaks for its job. */
public enum RoundChoice {
  /** The first: what the work gave before anything was put right. */
  FIRST,
  /** The last that is not stale: what was delivered. */
  LAST
}
