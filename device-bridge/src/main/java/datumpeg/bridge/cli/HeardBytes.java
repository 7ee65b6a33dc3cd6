package datumpeg.bridge.cli;

import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.meter.learn.Shown.Piece;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** What came over a link since one last asked. Thread-safe. */
final class HeardBytes implements LinkListener {
  /** After so long without a byte a meter has said what it had to say. */
  private static final long QUIET_NANOS = TimeUnit.MILLISECONDS.toNanos(250);

  /** A meter that never stops is not waited for longer. */
  private static final long LONGEST_NANOS = TimeUnit.MILLISECONDS.toNanos(1500);

  /** Of a meter that never stops only so many pieces are kept, the newest. */
  private static final int MOST_PIECES = 4096;

  private final List<Piece> pieces = new ArrayList<>();
  private long lastNanos;
  private @Nullable LinkLostException loss;

  @Override
  public synchronized void received(Chunk chunk) {
    if (pieces.size() == MOST_PIECES) {
      pieces.subList(0, MOST_PIECES / 2).clear();
    }
    pieces.add(new Piece(chunk.channel(), chunk.bytes()));
    lastNanos = System.nanoTime();
    notifyAll();
  }

  @Override
  public synchronized void lost(LinkLostException lost) {
    loss = lost;
    notifyAll();
  }

  @Override
  public synchronized void ended() {
    notifyAll();
  }

  /**
   * All that came since the last time, when the meter has become quiet; nothing if nothing comes.
   *
   * @throws LinkLostException if the link is gone and nothing had come before
   */
  synchronized List<Piece> take(long patienceMillis) throws InterruptedException {
    long start = System.nanoTime();
    long patience = TimeUnit.MILLISECONDS.toNanos(patienceMillis);
    while (pieces.isEmpty() && System.nanoTime() - start < patience) {
      requireLink();
      TimeUnit.NANOSECONDS.timedWait(this, QUIET_NANOS);
    }
    long began = System.nanoTime();
    while (!pieces.isEmpty()
        && System.nanoTime() - lastNanos < QUIET_NANOS
        && System.nanoTime() - began < LONGEST_NANOS) {
      TimeUnit.NANOSECONDS.timedWait(this, QUIET_NANOS / 5);
    }
    List<Piece> taken = List.copyOf(pieces);
    pieces.clear();
    return taken;
  }

  private void requireLink() {
    if (loss != null) {
      throw loss;
    }
  }
}
