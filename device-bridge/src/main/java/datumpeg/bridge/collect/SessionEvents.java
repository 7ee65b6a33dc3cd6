package datumpeg.bridge.collect;

import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ReturningLinkListener;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * What happens while measuring, from many threads to one, in order. At most {@value #MOST} events
 * wait: a meter that sends faster than can be dealt with is read no faster. Thread-safe.
 */
final class SessionEvents {
  private static final int MOST = 100;
  private static final long LOOK_MILLIS = 100;

  private final BlockingQueue<SessionEvent> events = new ArrayBlockingQueue<>(MOST);
  private final LinkClock clock;
  private volatile boolean over;

  SessionEvents(LinkClock clock) {
    this.clock = clock;
  }

  /** Adds an event, when there is room; nothing once it is all over. */
  void add(SessionEvent event) {
    boolean added = false;
    try {
      while (!added && !over) {
        added = events.offer(event, LOOK_MILLIS, TimeUnit.MILLISECONDS);
      }
    } catch (InterruptedException asked) {
      Thread.currentThread().interrupt();
    }
  }

  SessionEvent next() throws InterruptedException {
    return events.take();
  }

  /** The next event; empty if none comes for so long. */
  Optional<SessionEvent> next(Duration longest) throws InterruptedException {
    return Optional.ofNullable(events.poll(Math.max(0, longest.toNanos()), TimeUnit.NANOSECONDS));
  }

  /** Nobody takes events any longer. */
  void end() {
    over = true;
  }

  /** What listens to a link of this name. */
  ReturningLinkListener listener(String name) {
    return new ReturningLinkListener() {
      @Override
      public void received(Chunk chunk) {
        add(new SessionEvent.Received(name, chunk));
      }

      @Override
      public void lost(LinkLostException loss) {
        add(new SessionEvent.Lost(name, loss));
      }

      @Override
      public void ended() {
        add(new SessionEvent.Ended(name));
      }

      @Override
      public void away(LinkUnavailableException why) {
        add(new SessionEvent.Away(name, why));
      }

      @Override
      public void returned() {
        add(new SessionEvent.Returned(name, clock.monotonicNanos()));
      }

      @Override
      public void silent(Duration since) {
        add(new SessionEvent.Silent(name, since));
      }
    };
  }
}
