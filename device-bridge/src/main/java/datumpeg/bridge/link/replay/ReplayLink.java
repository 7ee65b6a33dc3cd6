package datumpeg.bridge.link.replay;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkThread;
import datumpeg.bridge.link.replay.CaptureEntry.Direction;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Feeds the received bytes of one link of a capture to a listener, in order, with the capture's
 * times, as fast as the listener takes them. What was sent while the capture was made is not sent
 * again. Thread-safe.
 */
public final class ReplayLink implements Link {
  private static final Logger LOG = LoggerFactory.getLogger(ReplayLink.class);

  private final LinkAddress.Replay address;
  private final CaptureReader capture;
  private final String linkName;
  private final LinkListener listener;
  private final LinkThread thread;
  private volatile boolean closed;
  private long receivedByteCount;

  private ReplayLink(
      LinkAddress.Replay address, CaptureReader capture, String linkName, LinkListener listener) {
    this.address = address;
    this.capture = capture;
    this.linkName = linkName;
    this.listener = listener;
    this.thread = new LinkThread(address, this::run);
  }

  /**
   * Opens a capture and feeds one of its links.
   *
   * @param linkName a name of the capture's header
   * @throws InputException if there is no such capture or no such link in it
   */
  public static ReplayLink open(
      LinkAddress.Replay address, String linkName, LinkListener listener) {
    CaptureReader capture = CaptureReader.open(address.file());
    if (!capture.header().links().containsKey(linkName)) {
      capture.close();
      throw new InputException(
          "The capture %s has no link '%s'; it has %s."
              .formatted(
                  address.file(), linkName, String.join(", ", capture.header().links().keySet())));
    }
    ReplayLink link = new ReplayLink(address, capture, linkName, listener);
    link.thread.start();
    return link;
  }

  private void run() {
    LinkLostException loss = null;
    try (capture) {
      feed();
    } catch (FailureException damage) {
      loss = lost(String.valueOf(damage.getMessage()), damage);
    } catch (RuntimeException defect) {
      LOG.error("The listener of {} failed", address.text(), defect);
      loss = lost("The replay stopped: a defect of this program, see the log.", defect);
    }
    if (!closed) {
      tellEnd(loss);
    }
  }

  private void tellEnd(@Nullable LinkLostException loss) {
    if (loss == null) {
      listener.ended();
    } else {
      listener.lost(loss);
    }
  }

  private void feed() {
    Optional<CaptureEntry> entry = capture.next();
    while (entry.isPresent() && !closed) {
      if (entry.get() instanceof Transfer transfer
          && transfer.direction() == Direction.RX
          && transfer.link().equals(linkName)) {
        receivedByteCount += transfer.bytes().length();
        listener.received(chunk(transfer));
      }
      entry = capture.next();
    }
  }

  private static Chunk chunk(Transfer transfer) {
    return new Chunk(
        transfer.bytes(), transfer.time(), transfer.monotonicNanos(), transfer.channel());
  }

  private LinkLostException lost(String message, Throwable cause) {
    return new LinkLostException(address.text(), receivedByteCount, message, cause);
  }

  @Override
  public LinkAddress address() {
    return address;
  }

  /** Does nothing: the meter of a capture hears no more. */
  @Override
  public void send(Bytes bytes) {}

  @Override
  public void close() {
    closed = true;
    thread.awaitEnd();
  }
}
