package datumpeg.bridge.link;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Keeps one link of any kind: when it is lost it is opened again, after pauses that grow to a
 * longest one and without an end, until this is closed. A meter that was sending by itself and
 * falls silent for {@link #STALLED} counts as lost. Thread-safe.
 *
 * <p>Each opening is a generation: what an earlier one still has to say is not heard.
 */
public final class ReturningLink implements Link {
  /** So long a meter that sends by itself may be silent; noticed within half as much again. */
  public static final Duration STALLED = Duration.ofSeconds(10);

  private static final Duration LOOK = Duration.ofSeconds(5);

  private final LinkAddress address;
  private final LinkOpener opener;
  private final Terms terms;
  private final ReturningLinkListener listener;

  /** Held while the listener is told something, and guards what follows it. */
  private final Object telling = new Object();

  private int generation;
  private int attempts;
  private boolean there;
  private boolean silenceSaid;
  private @Nullable Obstacle obstacleSaid;
  private Pulse pulse;

  private volatile @Nullable Link current;
  private volatile boolean closed;

  /**
   * On what terms a link is kept.
   *
   * @param silence after which it is said that nothing came; zero for never
   * @param timer of this link alone, closed with it
   */
  public record Terms(BackOff backOff, Duration silence, LinkClock clock, LinkTimer timer) {}

  private ReturningLink(
      LinkAddress address, LinkOpener opener, Terms terms, ReturningLinkListener listener) {
    this.address = address;
    this.opener = opener;
    this.terms = terms;
    this.listener = listener;
    this.pulse = new Pulse(terms.clock().monotonicNanos());
  }

  /**
   * Opens a link that must be there now.
   *
   * @throws LinkUnavailableException if it is not
   */
  public static ReturningLink open(
      LinkAddress address, LinkOpener opener, Terms terms, ReturningLinkListener listener) {
    ReturningLink link = new ReturningLink(address, opener, terms, listener);
    try {
      link.there = true; // nobody needs to be told that it has returned
      link.openOnce();
    } catch (LinkUnavailableException refused) {
      terms.timer().close();
      throw refused;
    }
    link.lookLater();
    return link;
  }

  /** Opens a link that may be there later only; until then the listener is told why not. */
  public static ReturningLink openOrAwait(
      LinkAddress address, LinkOpener opener, Terms terms, ReturningLinkListener listener) {
    ReturningLink link = new ReturningLink(address, opener, terms, listener);
    link.tryAgain();
    link.lookLater();
    return link;
  }

  private void openOnce() {
    int mine;
    synchronized (telling) {
      generation++;
      mine = generation;
      pulse = new Pulse(terms.clock().monotonicNanos());
      silenceSaid = false;
    }
    Link opened = opener.open(new Generation(mine));
    boolean lostMeanwhile;
    synchronized (telling) {
      lostMeanwhile = mine != generation;
      if (!lostMeanwhile) {
        current = opened;
        tellReturned();
      }
    }
    if (lostMeanwhile || closed) {
      opened.close();
    }
  }

  private void tryAgain() {
    if (closed) {
      return;
    }
    try {
      openOnce();
    } catch (LinkUnavailableException refused) {
      synchronized (telling) {
        if (!closed && refused.obstacle() != obstacleSaid) {
          obstacleSaid = refused.obstacle();
          listener.away(refused);
        }
        tryLater();
      }
    }
  }

  private void tryLater() {
    attempts++;
    terms.timer().after(terms.backOff().before(attempts), this::tryAgain);
  }

  private void tellReturned() {
    if (!there && !closed) {
      there = true;
      obstacleSaid = null;
      listener.returned();
    }
  }

  /** The generation is over; the next attempt is on its way. */
  private void tellLost(LinkLostException loss) {
    generation++;
    current = null;
    if (there) {
      there = false;
      // What is lost at once is mostly missing: that needs no sentence of its own.
      obstacleSaid = Obstacle.MISSING;
      listener.lost(loss);
    }
    tryLater();
  }

  private void lookLater() {
    terms.timer().after(LOOK, this::look);
  }

  /** Looks whether the link is silent for too long. */
  private void look() {
    Link stalled = null;
    synchronized (telling) {
      Link looked = current;
      Duration silent = Duration.ofNanos(pulse.silentNanos(terms.clock().monotonicNanos()));
      if (!closed && looked != null) {
        if (pulse.isSteady() && silent.compareTo(STALLED) >= 0) {
          stalled = looked;
          tellLost(stall(silent));
        } else if (isTooLong(silent) && !silenceSaid) {
          silenceSaid = true;
          listener.silent(terms.silence());
        }
      }
    }
    if (stalled != null) {
      stalled.close();
    }
    lookLater();
  }

  private boolean isTooLong(Duration silent) {
    return !terms.silence().isZero() && silent.compareTo(terms.silence()) >= 0;
  }

  private LinkLostException stall(Duration silent) {
    return new LinkLostException(
        address.text(),
        0,
        "The meter on "
            + address.text()
            + " was sending by itself and has been silent for "
            + silent.toSeconds()
            + " s: stalled, out of reach or switched off.",
        null);
  }

  /** Hears one opening of the link. */
  private final class Generation implements LinkListener {
    private final int mine;

    Generation(int mine) {
      this.mine = mine;
    }

    @Override
    public void received(Chunk chunk) {
      synchronized (telling) {
        if (mine == generation && !closed) {
          tellReturned();
          attempts = 0;
          silenceSaid = false;
          pulse.heard(chunk.monotonicNanos());
          listener.received(chunk);
        }
      }
    }

    @Override
    public void lost(LinkLostException loss) {
      synchronized (telling) {
        if (mine == generation && !closed) {
          tellLost(loss);
        }
      }
    }

    @Override
    public void ended() {
      synchronized (telling) {
        if (mine == generation && !closed) {
          generation++;
          current = null;
          listener.ended();
        }
      }
    }
  }

  @Override
  public LinkAddress address() {
    return address;
  }

  @Override
  public void send(Bytes bytes) {
    Link open = current;
    if (open == null) {
      throw new LinkLostException(
          address.text(),
          0,
          address.text() + " is away, so that " + bytes.length() + " bytes could not be sent.",
          null);
    }
    open.send(bytes);
  }

  @Override
  public void close() {
    closed = true;
    terms.timer().close();
    Link open = current;
    if (open != null) {
      open.close();
    }
  }
}
