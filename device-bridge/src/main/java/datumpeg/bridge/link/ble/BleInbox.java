package datumpeg.bridge.link.ble;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.LinkClock;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * What a connection tells, stamped when it comes and kept in order until the link's thread takes
 * it. A meter that sends faster than it can be read is not a meter: when the inbox is full the
 * connection counts as gone. Thread-safe.
 */
final class BleInbox implements BleEvents {
  /** Some eight seconds at 500 notifications a second. */
  static final int MOST = 4096;

  /** GATT values have at most 512 bytes: Bluetooth Core Specification, volume 3, part F, 3.2.9. */
  private static final int LONGEST_VALUE = 512;

  private final BlockingQueue<BleArrival> arrivals = new ArrayBlockingQueue<>(MOST);
  private final LinkClock clock;
  private volatile @Nullable String goneBecause;

  BleInbox(LinkClock clock) {
    this.clock = clock;
  }

  @Override
  public void notified(String handle, Bytes value) {
    if (value.length() > LONGEST_VALUE) {
      gone("it sent a value of " + value.length() + " bytes; 512 is the most there can be");
    } else if (!value.isEmpty()) {
      add(new BleArrival.Notified(handle, value, clock.now(), clock.monotonicNanos()));
    }
  }

  @Override
  public void battery(int percent) {
    if (percent >= 0 && percent <= 100) {
      add(new BleArrival.Battery(percent, clock.now(), clock.monotonicNanos()));
    }
  }

  @Override
  public void gone(String why) {
    if (goneBecause == null) {
      goneBecause = why;
    }
  }

  private void add(BleArrival arrival) {
    if (goneBecause == null && !arrivals.offer(arrival)) {
      gone("it sends faster than it can be read; " + MOST + " values wait");
    }
  }

  /** The next thing told, the end last of all; null if nothing came in time. */
  @Nullable BleArrival next(long waitNanos) throws InterruptedException {
    BleArrival arrival = arrivals.poll();
    String why = goneBecause;
    if (arrival == null && why != null) {
      // What came just before the end was said must not be lost behind it.
      BleArrival last = arrivals.poll();
      return last == null ? new BleArrival.Gone(why) : last;
    }
    return arrival == null && waitNanos > 0
        ? arrivals.poll(waitNanos, TimeUnit.NANOSECONDS)
        : arrival;
  }
}
