package datumpeg.bridge.link.replay;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.replay.CaptureEntry.Direction;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import java.util.Optional;

/**
 * Feeds the received bytes of one link of a capture to a listener, in order, with the capture's
 * times, as fast as the listener takes them. What was sent while the capture was made is not sent
 * again. Thread-safe.
 */
public final class ReplayLink implements Link {
  private final LinkAddress address;
  private final CaptureReader capture;
  private final String linkName;
  private final LinkListener listener;
  private final Thread feeder;
  private volatile boolean closed;
  private long receivedByteCount;

  private ReplayLink(
      LinkAddress address, CaptureReader capture, String linkName, LinkListener listener) {
    this.address = address;
    this.capture = capture;
    this.linkName = linkName;
    this.listener = listener;
    this.feeder = new Thread(this::feed, "link " + address.text());
    feeder.setDaemon(true);
  }

  /**
   * Opens a capture and feeds one of its links.
   *
   * @param linkName a name of the capture's header
   * @throws datumpeg.bridge.failure.InputException if there is no such capture or no such link in
   *     it
   */
  public static ReplayLink open(
      LinkAddress.Replay address, String linkName, LinkListener listener) {
    CaptureReader capture = CaptureReader.open(address.file());
    if (!capture.header().links().containsKey(linkName)) {
      capture.close();
      throw new InputException(
          "The capture %s has no link '%s'; it has %s."
              .formatted(address.file(), linkName, capture.header().links().keySet()));
    }
    ReplayLink link = new ReplayLink(address, capture, linkName, listener);
    link.feeder.start();
    return link;
  }

  private void feed() {
    try (capture) {
      Optional<CaptureEntry> entry = capture.next();
      while (entry.isPresent() && !closed) {
        if (entry.get() instanceof Transfer transfer) {
          pass(transfer);
        }
        entry = capture.next();
      }
      if (!closed) {
        listener.ended();
      }
    } catch (FailureException damage) {
      if (!closed) {
        listener.lost(new LinkLostException(address.text(), receivedByteCount, text(damage)));
      }
    }
  }

  private static String text(FailureException damage) {
    return String.valueOf(damage.getMessage());
  }

  private void pass(Transfer transfer) {
    if (transfer.direction() == Direction.RX && transfer.link().equals(linkName)) {
      receivedByteCount += transfer.bytes().length();
      listener.received(
          new Chunk(
              transfer.bytes(), transfer.time(), transfer.monotonicNanos(), transfer.channel()));
    }
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
    if (Thread.currentThread() != feeder) {
      boolean interrupted = false;
      while (feeder.isAlive()) {
        try {
          feeder.join();
        } catch (InterruptedException e) {
          interrupted = true;
        }
      }
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
