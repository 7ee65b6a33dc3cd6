package datumpeg.analysis.check;

import datumpeg.analysis.conform.Outcome;
import java.util.List;

/** One check, or a family that shares one adjustment. */
public interface Check {
  /** Looks at the readings it knows and says what follows from them; empty if it knows none. */
  CheckResult of(StageReadings readings);

  /** The outcomes alone, for one who wants nothing said of them. */
  default List<Outcome> outcomes(StageReadings readings) {
    return of(readings).outcomes();
  }
}
