package datumpeg.bridge.collect;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureWriter;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * The capture of a running session. When it can no longer be written, that is said and the session
 * goes on: a full disk must not end a measurement. It is tried again after a pause with what comes
 * then. One thread.
 */
final class SessionCapture {
  private final CaptureWriter writer;
  private final String name;
  private final LinkClock clock;
  private final Duration pause;
  private final SessionWatcher watcher;
  private boolean broken;
  private long triedNanos;

  SessionCapture(
      CaptureWriter writer, String name, LinkClock clock, Duration pause, SessionWatcher watcher) {
    this.writer = writer;
    this.name = name;
    this.clock = clock;
    this.pause = pause;
    this.watcher = watcher;
  }

  /** Keeps bytes; returns what a reading decoded from them names as its source. */
  String received(String link, Chunk chunk) {
    return kept(() -> writer.received(link, chunk).number());
  }

  /** Keeps an act; returns what a typed reading names as its source. */
  String acted(Kind kind, @Nullable Wanted wanted, @Nullable String text) {
    String target = wanted == null ? null : wanted.target().text();
    Integer face = wanted == null || wanted.face() == 0 ? null : wanted.face();
    return kept(() -> writer.acted(kind, target, face, text, clock).number());
  }

  private interface Line {
    long write();
  }

  private String kept(Line line) {
    if (broken && clock.monotonicNanos() - triedNanos < pause.toNanos()) {
      return withoutLine();
    }
    try {
      // The header is line 1 of the file.
      String source = "measure " + name + " line " + (line.write() + 1);
      if (broken) {
        broken = false;
        watcher.captureGoesOn();
      }
      return source;
    } catch (OuterWorldException refused) {
      triedNanos = clock.monotonicNanos();
      if (!broken) {
        broken = true;
        watcher.captureEnded(String.valueOf(refused.getMessage()));
      }
      return withoutLine();
    }
  }

  private String withoutLine() {
    return "measure, not kept in " + name;
  }

  /** Closes the file until something is kept again, so that its disk can be taken out. */
  void letGo() {
    writer.letGo();
  }
}
