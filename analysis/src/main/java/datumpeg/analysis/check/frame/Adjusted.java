package datumpeg.analysis.check.frame;

import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;

/** The words beside a value that is decided on as adjusted and was observed otherwise. */
final class Adjusted {
  /**
   * A difference below this is not worth a word: a tenth of a millimetre is the last place shown.
   */
  private static final double TOLD_METRES = 0.00005;

  private Adjusted() {}

  static String aside(Estimate observed, Estimate decided) {
    return Math.abs(observed.value() - decided.value()) < TOLD_METRES
        ? ""
        : "decided as adjusted with all readings of the frames; as observed "
            + Millimetres.signed(observed.value());
  }
}
