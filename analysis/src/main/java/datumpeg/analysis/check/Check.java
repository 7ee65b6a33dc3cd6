package datumpeg.analysis.check;

/** One check, or a family that shares one adjustment. */
public interface Check {
  /** Looks at the readings it knows and says what follows from them; empty if it knows none. */
  CheckResult of(StageReadings readings);
}
