package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.ble.BleBackend;
import datumpeg.bridge.link.ble.BleConnection;
import datumpeg.bridge.link.ble.BleEvents;
import datumpeg.bridge.link.ble.BleSighting;
import datumpeg.bridge.link.ble.Patience;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * Reaches meters through TinyB. Each discovery and each meter has a child process of its own,
 * started afresh: after a reconnect within one process the library delivered values twice, then
 * thrice, then none. A crash of the library ends a child, never this program.
 */
public final class TinybBackend implements BleBackend {
  /** Starting a Java process on a slow single-board computer. */
  private static final Duration STARTING = Duration.ofSeconds(20);

  private final String busAddress;
  private final Patience patience;

  /**
   * A backend on a bus.
   *
   * @param busAddress of the bus, in D-Bus's own notation
   */
  public TinybBackend(String busAddress, Patience patience) {
    this.busAddress = busAddress;
    this.patience = patience;
  }

  @Override
  public List<BleSighting> discover(String adapter, Duration howLong) {
    List<BleSighting> heard = new ArrayList<>();
    String[] arguments = {"discover", orDash(adapter), String.valueOf(howLong.toMillis())};
    try (ChildProcess child = ChildProcess.start(busAddress, arguments)) {
      TinybGreeting greeting = new TinybGreeting(adapter, "", patience, heard);
      greeting.await(child, "done", STARTING.plus(howLong));
    }
    return heard;
  }

  @Override
  public BleConnection connect(LinkAddress.Ble address, BleEvents events) {
    String[] arguments = {
      "connect",
      orDash(address.adapter()),
      address.device(),
      String.valueOf(patience.discovery().toMillis()),
      String.valueOf(patience.connecting().toMillis())
    };
    ChildProcess child = ChildProcess.start(busAddress, arguments);
    try {
      TinybGreeting greeting =
          new TinybGreeting(address.adapter(), address.device(), patience, new ArrayList<>());
      Duration most =
          STARTING
              .plus(patience.discovery())
              .plus(patience.connecting())
              .plus(patience.connecting());
      greeting.await(child, "ready", most);
      return TinybConnection.of(address.device(), child, greeting, events, patience);
    } catch (RuntimeException refused) {
      child.close();
      throw refused;
    }
  }

  private static String orDash(String adapter) {
    return adapter.isEmpty() ? "-" : adapter;
  }
}
