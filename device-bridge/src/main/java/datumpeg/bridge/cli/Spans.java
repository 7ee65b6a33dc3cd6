package datumpeg.bridge.cli;

import datumpeg.bridge.collect.LinkTerms;
import datumpeg.bridge.collect.WaitingTerms;
import java.time.Duration;

/**
 * The spans by which a session goes, which a test makes shorter.
 *
 * @param pause as in {@link WaitingTerms#pause}
 * @param apart as in {@link LinkTerms#apart}
 */
record Spans(Duration pause, Duration apart) {
  static final Spans USUAL = new Spans(WaitingTerms.USUAL_PAUSE, LinkTerms.USUAL.apart());
}
