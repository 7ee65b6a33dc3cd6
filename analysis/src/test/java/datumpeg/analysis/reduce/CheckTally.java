package datumpeg.analysis.reduce;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import org.hipparchus.stat.descriptive.StreamingStatistics;

/**
 * What became of one check over many simulated jobs. Outcomes of one job share errors, so the
 * uncertainty of a share is that of the mean of the jobs' own shares. One thread.
 */
final class CheckTally {
  private final TrueValues.Kind kind;
  private final StreamingStatistics coveredOfJob = new StreamingStatistics();
  private final StreamingStatistics uncertaintyMetres = new StreamingStatistics();
  private final StreamingStatistics errorMetres = new StreamingStatistics();
  private long outside;
  private long outsideAccepted;
  private long inside;
  private long insideRejected;
  private long covered;
  private int outcomesOfJob;
  private int coveredInJob;

  CheckTally(TrueValues.Kind kind) {
    this.kind = kind;
  }

  void add(Outcome outcome, double truthMetres) {
    double found = outcome.deviation();
    boolean holds = Math.abs(found - truthMetres) <= outcome.expandedUncertainty();
    covered += holds ? 1 : 0;
    coveredInJob += holds ? 1 : 0;
    outcomesOfJob++;
    uncertaintyMetres.addValue(outcome.expandedUncertainty());
    errorMetres.addValue(
        kind == TrueValues.Kind.SIGNED
            ? found - truthMetres
            : outcome.measured() - Math.abs(truthMetres));
    outcome.limits().ifPresent(limits -> judge(outcome, limits, truthMetres));
  }

  private void judge(Outcome outcome, Limits limits, double truthMetres) {
    boolean conforms =
        truthMetres >= limits.lower().orElse(Double.NEGATIVE_INFINITY)
            && truthMetres <= limits.upper().orElse(Double.POSITIVE_INFINITY);
    if (conforms) {
      inside++;
      insideRejected += outcome.is(Verdict.NONCONFORMING) ? 1 : 0;
    } else {
      outside++;
      outsideAccepted += outcome.is(Verdict.CONFORMING) ? 1 : 0;
    }
  }

  void endJob() {
    if (outcomesOfJob > 0) {
      coveredOfJob.addValue((double) coveredInJob / outcomesOfJob);
    }
    outcomesOfJob = 0;
    coveredInJob = 0;
  }

  TrueValues.Kind kind() {
    return kind;
  }

  long jobs() {
    return coveredOfJob.getN();
  }

  long outcomes() {
    return uncertaintyMetres.getN();
  }

  /** Share of the outcomes whose interval holds the truth. */
  double coverage() {
    return (double) covered / outcomes();
  }

  /** Standard uncertainty of {@link #coverage}, from the jobs' scatter; 0 if all are alike. */
  double coverageUncertainty() {
    return coveredOfJob.getStandardDeviation() / Math.sqrt((double) jobs());
  }

  double meanExpandedUncertaintyMetres() {
    return uncertaintyMetres.getMean();
  }

  /** Mean of found − true; for what is printed without a sign, of the sizes. */
  double biasMetres() {
    return errorMetres.getMean();
  }

  /** Outcomes whose truth lies outside the limits. */
  long outside() {
    return outside;
  }

  /** Share of those accepted all the same; 0 if there are none. */
  double falseAcceptance() {
    return outside == 0 ? 0 : (double) outsideAccepted / outside;
  }

  long inside() {
    return inside;
  }

  /** Share of the outcomes whose truth lies inside that were rejected all the same. */
  double falseRejection() {
    return inside == 0 ? 0 : (double) insideRejected / inside;
  }
}
