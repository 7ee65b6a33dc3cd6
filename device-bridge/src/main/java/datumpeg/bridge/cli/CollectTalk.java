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

  /** Says how the session stands, if it is time to: that a limit is reached, at once. */
  void stands(Standing standing) {
    long now = System.nanoTime();
    if (!standing.equals(told)
        && (told == null || now - toldNanos >= MINUTE_NANOS || reachesLimit(told, standing))) {
      told = standing;
      toldNanos = now;
      say(line(standing));
    }
  }

  private static boolean reachesLimit(Standing before, Standing now) {
    return (!now.limit().isEmpty() && !now.limit().equals(before.limit()))
        || (now.lostCount() > 0 && before.lostCount() == 0);
  }

  private String line(Standing standing) {
    return "Status: %d recorded%s, %d without a target%s%s, %d target(s) open, %d of %d link(s) open%s%s."
        .formatted(
            standing.recordedCount(),
            counted(standing.waitingCount(), " (%d not stored yet)"),
            standing.unassignedCount(),
            counted(standing.unassignedWaitingCount(), " and %d that wait for the table"),
            counted(standing.lostCount(), " and %d LEFT OUT"),
            standing.openTargetCount(),
            standing.openLinkCount(),
            standing.linkCount(),
            last.isEmpty() ? "" : "; last recorded " + last,
            standing.limit().isEmpty() ? "" : "; LIMIT REACHED: " + standing.limit());
  }

  private static String counted(long count, String words) {
    return count == 0 ? "" : words.formatted(count);
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
  public void unassignedWaiting(int count, String why) {
    say("NOT IN THE TABLE YET: " + count + " value(s) without a target wait. " + why);
  }

  @Override
  public void unassignedDrained() {
    say("The values without a target that waited are in the table now.");
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
