package datumpeg.bridge.cli;

import datumpeg.bridge.collect.GuideState;
import datumpeg.bridge.collect.LinkState;
import datumpeg.bridge.collect.SessionWatcher;
import datumpeg.bridge.collect.UnattendedSession.Standing;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.PrintStream;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Says how an unattended session goes: trouble at once, all else in one status line a minute at
 * most, and none while nothing changes. The same lines go to the log file, which is of bounded
 * size. One thread.
 */
final class CollectTalk implements SessionWatcher {
  private static final Logger LOG = LoggerFactory.getLogger(CollectTalk.class);
  private static final long MINUTE_NANOS = TimeUnit.MINUTES.toNanos(1);

  private final PrintStream err;
  private @Nullable Standing told;
  private long toldNanos;
  private String last = "";

  CollectTalk(PrintStream err) {
    this.err = err;
  }

  /** Says how the session stands, if it is time to. */
  void stands(Standing standing) {
    long now = System.nanoTime();
    if (!standing.equals(told) && (told == null || now - toldNanos >= MINUTE_NANOS)) {
      told = standing;
      toldNanos = now;
      say(line(standing));
    }
  }

  private String line(Standing standing) {
    return "Status: %d recorded, %d without a target%s, %d target(s) open, %d of %d link(s) open%s."
        .formatted(
            standing.recordedCount(),
            standing.unassignedCount(),
            standing.captureOnlyCount() == 0
                ? ""
                : " and " + standing.captureOnlyCount() + " that the table has not taken",
            standing.openTargetCount(),
            standing.openLinkCount(),
            standing.linkCount(),
            (standing.waitingCount() == 0 ? "" : ", " + standing.waitingCount() + " not stored yet")
                + (last.isEmpty() ? "" : "; last recorded " + last));
  }

  private void say(String line) {
    err.println(line);
    LOG.info("{}", line);
  }

  @Override
  public void recorded(ReadingEntry reading) {
    last = (reading.value() + " " + reading.unit()).strip() + " for " + reading.target();
  }

  @Override
  public void waiting(int count, String why) {
    say("NOT STORED YET: " + count + " wait(s). " + why);
  }

  @Override
  public void drained() {
    say("What waited is stored now.");
  }

  @Override
  public void captureEnded(String why) {
    say("THE RAW BYTES ARE NOT KEPT: " + why);
  }

  @Override
  public void captureGoesOn() {
    say("The raw bytes are kept again; those since then are missing.");
  }

  @Override
  public void lost(LinkLostException loss, int droppedByteCount) {
    say(loss.getMessage() + " It is opened again as soon as it is there.");
  }

  @Override
  public void link(String link, LinkState state, String sentence) {
    say(sentence);
  }

  /** The counts say how many; which, the table and the capture say. */
  @Override
  public void putAside(String why) {
    LOG.debug("{}", why);
  }

  @Override
  public void asking(Wanted wanted, int leftAfterThis) {
    throw new IllegalStateException("nobody is asked");
  }

  @Override
  public void withdrawn(ReadingEntry reading) {
    throw new IllegalStateException("nobody withdraws");
  }

  @Override
  public void held(GuideState.Question question) {
    throw new IllegalStateException("nobody is asked");
  }
}
