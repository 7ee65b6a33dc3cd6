package datumpeg.bridge.link.ble;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkThread;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import datumpeg.bridge.link.ble.BleChoice.Chosen;
import datumpeg.bridge.link.ble.BleConnection.Answer;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * An open Bluetooth LE meter.
 *
 * <p>Each characteristic is a channel named by its UUID. What a characteristic says of its own
 * values comes first, on the channel UUID{@link #DESCRIPTION}; the battery's level comes on the
 * channel of its own UUID, when it changes. A capture of the link therefore holds all that is
 * needed to read it. Thread-safe.
 */
public final class BleLink implements Link {
  /** Behind the UUID of a characteristic: the channel of its presentation format. */
  public static final String DESCRIPTION = "/2904";

  private static final Logger LOG = LoggerFactory.getLogger(BleLink.class);

  /** How long nothing is looked at; what comes is dealt with at once all the same. */
  private static final long TICK_NANOS = 250_000_000L;

  private static final int UNKNOWN = -1;

  private final LinkAddress.Ble address;
  private final BleConnection connection;
  private final Map<String, String> channels = new LinkedHashMap<>();
  private final Optional<BleCharacteristic> commands;
  private final BleInbox inbox;
  private final LinkClock clock;
  private final LinkListener listener;
  private final LinkThread thread;
  private final SilenceWatch silence;
  private final AtomicLong receivedByteCount = new AtomicLong();
  private Optional<BleCharacteristic> heartbeat;
  private int batteryPercent = UNKNOWN;
  private volatile boolean closed;

  private BleLink(
      LinkAddress.Ble address,
      BleConnection connection,
      List<Chosen> chosen,
      BleInbox inbox,
      LinkClock clock,
      LinkListener listener) {
    this.address = address;
    this.connection = connection;
    this.inbox = inbox;
    this.clock = clock;
    this.listener = listener;
    List<BleCharacteristic> all = connection.characteristics();
    this.commands = BleChoice.commands(all, chosen);
    this.heartbeat = BleChoice.heartbeat(all, chosen);
    chosen.forEach(one -> channels.put(one.characteristic().handle(), one.channel()));
    this.silence = new SilenceWatch(clock.monotonicNanos());
    this.thread = new LinkThread(address, () -> run(chosen));
  }

  /**
   * Connects to the meter and listens to it.
   *
   * @param wantedUuids the characteristics of its profile, in small letters; empty where they
   *     follow from the meter itself
   * @throws LinkUnavailableException if it cannot be reached or reports nothing of use
   */
  public static BleLink open(
      LinkAddress.Ble address,
      BleBackend backend,
      Set<String> wantedUuids,
      LinkClock clock,
      LinkListener listener) {
    BleInbox inbox = new BleInbox(clock);
    BleConnection connection = backend.connect(address, inbox);
    try {
      List<Chosen> chosen = BleChoice.of(address, connection.characteristics(), wantedUuids);
      BleLink link = new BleLink(address, connection, chosen, inbox, clock, listener);
      chosen.forEach(one -> connection.subscribe(one.characteristic()));
      link.thread.start();
      return link;
    } catch (RuntimeException refused) {
      connection.close();
      throw refused;
    }
  }

  private void run(List<Chosen> chosen) {
    LinkLostException loss;
    try {
      describe(chosen);
      loss = listenUntilEnd();
    } catch (InterruptedException e) {
      loss = lost("its thread was interrupted", e);
    } catch (RuntimeException defect) {
      LOG.error("The listener of {} failed", address.text(), defect);
      loss = lost("a defect of this program, see the log", defect);
    }
    // Given back first: who hears of the loss may want to open it again.
    connection.close();
    boolean asked = closed;
    closed = true;
    if (!asked && loss != null) {
      listener.lost(loss);
    }
  }

  private void describe(List<Chosen> chosen) {
    for (Chosen one : chosen) {
      Bytes presentation = one.characteristic().presentation();
      if (!presentation.isEmpty()) {
        listener.received(
            new Chunk(
                presentation, clock.now(), clock.monotonicNanos(), one.channel() + DESCRIPTION));
      }
    }
    askHeartbeat();
  }

  /** Listens until the meter is gone, which it returns, or until the link is closed. */
  private @Nullable LinkLostException listenUntilEnd() throws InterruptedException {
    while (!closed) {
      BleArrival arrival = inbox.next(TICK_NANOS);
      if (arrival instanceof BleArrival.Gone gone) {
        return lost(gone.why(), null);
      }
      if (arrival == null) {
        lookAround();
      } else {
        take(arrival);
      }
    }
    return null;
  }

  private void take(BleArrival arrival) {
    if (arrival instanceof BleArrival.Notified notified) {
      String channel = channels.get(notified.handle());
      if (channel != null) {
        receivedByteCount.addAndGet(notified.value().length());
        silence.restart(notified.monotonicNanos());
        listener.received(
            new Chunk(notified.value(), notified.at(), notified.monotonicNanos(), channel));
      }
    } else if (arrival instanceof BleArrival.Battery battery) {
      tellBattery(battery.percent());
    }
  }

  private void lookAround() {
    connection.trouble().ifPresent(inbox::gone);
    if (silence.isWorthAsking(clock.monotonicNanos())) {
      askHeartbeat();
      silence.restart(clock.monotonicNanos());
    }
  }

  private void askHeartbeat() {
    heartbeat.ifPresent(
        asked -> {
          Answer answer = connection.read(asked);
          switch (answer.kind()) {
            case VALUE -> {
              if (asked.uuid().equals(GattNames.BATTERY_LEVEL) && !answer.value().isEmpty()) {
                tellBattery(answer.value().at(0));
              }
            }
            case REFUSED -> heartbeat = Optional.empty();
            case NONE -> inbox.gone("it does not answer");
          }
        });
  }

  private void tellBattery(int percent) {
    if (percent != batteryPercent && percent <= 100) {
      batteryPercent = percent;
      listener.received(
          new Chunk(
              Bytes.of((byte) percent),
              clock.now(),
              clock.monotonicNanos(),
              GattNames.BATTERY_LEVEL));
    }
  }

  private LinkLostException lost(String why, @Nullable Throwable cause) {
    return new LinkLostException(
        address.text(),
        receivedByteCount.get(),
        "The meter %s was lost after %d bytes: %s."
            .formatted(address.device(), receivedByteCount.get(), why),
        cause);
  }

  @Override
  public LinkAddress address() {
    return address;
  }

  /**
   * Sends to the characteristic that takes commands.
   *
   * @throws LinkUnavailableException if the meter has none
   */
  @Override
  public void send(Bytes bytes) {
    if (closed) {
      throw lost("it is closed, so that %d bytes were not sent".formatted(bytes.length()), null);
    }
    BleCharacteristic target =
        commands.orElseThrow(
            () ->
                new LinkUnavailableException(
                    Obstacle.REFUSED, "The meter " + address.device() + " takes no commands."));
    if (!connection.write(target, bytes)) {
      throw lost("it did not take %d bytes sent".formatted(bytes.length()), null);
    }
  }

  @Override
  public void close() {
    closed = true;
    thread.awaitEnd();
  }
}
