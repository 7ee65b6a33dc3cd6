package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.BackOff;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.ReturningLink;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/**
 * A link that is lost over and over: how many of the values the peer delivered were received, and
 * whether the link came back each time. Pauses pass by an injected clock. One thread.
 */
final class BleCampaign {
  private static final int VALUES_EACH = 5;
  private static final Duration STEP = Duration.ofMillis(250);
  private static final long DEADLINE_NANOS = TimeUnit.SECONDS.toNanos(60);

  private final InventedMeter meter;
  private final BleBackend backend;
  private final SteppedClock clock = new SteppedClock();
  private final SkippingTimer timer = new SkippingTimer(clock);
  private final CountingListener listener = new CountingListener(InventedMeter.DISTANCE);
  private final int underWay;
  private long sent;

  /**
   * A campaign not run yet.
   *
   * @param underWay how many values are not awaited before a blow
   */
  BleCampaign(InventedMeter meter, BleBackend backend, int underWay) {
    this.meter = meter;
    this.backend = backend;
    this.underWay = underWay;
  }

  /** How a connection is made to end. */
  interface Blow {
    void strike() throws IOException, InterruptedException;
  }

  /**
   * What came of it.
   *
   * @param blows how often the link was made to end
   * @param losses how often it was said to be lost
   * @param returns how often it was said to be there again
   * @param sent values the peer delivered to the bus for a subscriber
   * @param received values the link handed on
   * @param outOfPlace values that were not the next in order, doubled or early
   * @param medianReturn from the blow until values flow again, with the pauses skipped
   * @param longestReturn the longest of these
   */
  record Result(
      int blows,
      int losses,
      int returns,
      long sent,
      long received,
      long outOfPlace,
      Duration medianReturn,
      Duration longestReturn) {

    /** Survived, and nothing lost that the peer delivered. */
    boolean isWhole() {
      return losses == blows && returns == blows && received == sent && outOfPlace == 0;
    }

    String row(String name) {
      return "| %s | %d | %d | %d | %d | %d | %d | %d | %d |"
          .formatted(
              name,
              blows,
              losses,
              returns,
              sent,
              received,
              outOfPlace,
              medianReturn.toMillis(),
              longestReturn.toMillis());
    }
  }

  /** Strikes so often, each time after values came. */
  Result run(int blows, Blow blow) throws IOException, InterruptedException {
    LinkAddress.Ble address = (LinkAddress.Ble) LinkAddress.parse("ble:" + InventedMeter.ADDRESS);
    List<Duration> returns = new ArrayList<>();
    try (ReturningLink link =
        ReturningLink.open(
            address,
            heard -> BleLink.open(address, backend, Set.of(InventedMeter.DISTANCE), clock, heard),
            new ReturningLink.Terms(BackOff.USUAL, Duration.ZERO, clock, timer),
            listener)) {
      sendAndAwait();
      for (int i = 1; i <= blows; i++) {
        int number = i;
        long start = System.nanoTime();
        blow.strike();
        until("loss " + i + " is said", () -> listener.losses() >= number);
        until(
            "the link is there for the time " + i + " of " + link.address().text(),
            () -> {
              timer.pass(STEP);
              return listener.returns() >= number && meter.distance().isSubscribed();
            });
        returns.add(Duration.ofNanos(System.nanoTime() - start));
        sendAndAwait();
      }
      until("the last value comes", () -> listener.received() >= sent);
    }
    Collections.sort(returns);
    return new Result(
        blows,
        listener.losses(),
        listener.returns(),
        sent,
        listener.received(),
        listener.outOfPlace(),
        returns.get(returns.size() / 2),
        returns.get(returns.size() - 1));
  }

  private void sendAndAwait() {
    for (int i = 0; i < VALUES_EACH; i++) {
      if (meter.distance().send(InventedMeter.bytes(sent + 1))) {
        sent++;
      }
    }
    until("values come", () -> listener.received() >= sent - underWay);
  }

  private void until(String what, BooleanSupplier happened) {
    long start = System.nanoTime();
    while (!happened.getAsBoolean()) {
      if (System.nanoTime() - start > DEADLINE_NANOS) {
        throw new IllegalStateException("waited too long until " + what + "; " + listener);
      }
      LockSupport.parkNanos(2_000_000);
    }
  }
}
