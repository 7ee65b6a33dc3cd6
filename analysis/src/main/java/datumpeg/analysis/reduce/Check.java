package datumpeg.analysis.reduce;

/** One check, or a family that shares one adjustment. */
interface Check {
  /** Looks at the readings it knows and says what follows from them; empty if it knows none. */
  CheckResult of(StageReadings readings);
}
