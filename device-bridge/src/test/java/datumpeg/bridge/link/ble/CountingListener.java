package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ReturningLinkListener;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/** Counts what a link tells; values are numbered from 1. Thread-safe. */
final class CountingListener implements ReturningLinkListener {
  private final String channel;
  private final AtomicLong received = new AtomicLong();
  private final AtomicLong outOfPlace = new AtomicLong();
  private final AtomicInteger losses = new AtomicInteger();
  private final AtomicInteger returns = new AtomicInteger();
  private volatile String last = "nothing yet";

  CountingListener(String channel) {
    this.channel = channel;
  }

  @Override
  public void received(Chunk chunk) {
    if (chunk.channel().equals(channel)) {
      long number = received.incrementAndGet();
      if (!chunk.bytes().equals(InventedMeter.bytes(number))) {
        outOfPlace.incrementAndGet();
      }
    }
  }

  @Override
  public void lost(LinkLostException loss) {
    last = String.valueOf(loss.getMessage());
    losses.incrementAndGet();
  }

  @Override
  public void away(LinkUnavailableException why) {
    last = String.valueOf(why.getMessage());
  }

  @Override
  public void returned() {
    returns.incrementAndGet();
  }

  @Override
  public void silent(Duration since) {}

  @Override
  public void ended() {
    throw new IllegalStateException("a live link has no end of its own");
  }

  long received() {
    return received.get();
  }

  long outOfPlace() {
    return outOfPlace.get();
  }

  int losses() {
    return losses.get();
  }

  int returns() {
    return returns.get();
  }

  @Override
  public String toString() {
    return "%d received, %d losses, %d returns, last said: %s"
        .formatted(received.get(), losses.get(), returns.get(), last);
  }
}
