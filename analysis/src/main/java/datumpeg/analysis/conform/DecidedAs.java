package datumpeg.analysis.conform;

/** As what a check's number is decided: see {@link Decision}. */
public enum DecidedAs {
  /** One value with its sign. */
  VALUE,
  /** The greatest less the smallest of some. */
  SPREAD,
  /** The greatest of some absolute values. */
  MAXIMUM
}
