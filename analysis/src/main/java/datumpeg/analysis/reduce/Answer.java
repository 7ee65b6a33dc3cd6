package datumpeg.analysis.reduce;

import java.util.Locale;

/**
 * The first thing a reader is told of a stage.
 *
 * @param sentence can we go on
 * @param first what to do first; empty when there is nothing to do
 */
public record Answer(Kind kind, String sentence, String first) {
  /** How it stands. */
  public enum Kind {
    /** Every outcome conforms. */
    GO_ON,
    /** Something is too close to call. */
    MEASURE_AGAIN,
    /** Something is out of its limits. */
    STOP,
    /** Values without limits: nothing to decide. */
    NOT_DECIDED;

    public String text() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
