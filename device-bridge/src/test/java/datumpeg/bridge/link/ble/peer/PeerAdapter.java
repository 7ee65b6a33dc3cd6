package datumpeg.bridge.link.ble.peer;

import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.freedesktop.dbus.types.UInt32;
import org.freedesktop.dbus.types.Variant;

/** The radio of the peer's machine. Thread-safe. */
public final class PeerAdapter extends PeerObject implements BluezInterfaces.Adapter {
  static final String NAME = "org.bluez.Adapter1";

  private final AtomicInteger discoveries = new AtomicInteger();

  PeerAdapter(BluezPeer peer, String path) {
    super(peer, path);
    begin(NAME, "Address", new Variant<>("02:00:00:00:00:01"));
    begin(NAME, "AddressType", new Variant<>("public"));
    begin(NAME, "Name", new Variant<>("peer"));
    begin(NAME, "Alias", new Variant<>("peer"));
    begin(NAME, "Class", new Variant<>(new UInt32(0)));
    begin(NAME, "Powered", new Variant<>(true));
    begin(NAME, "Discoverable", new Variant<>(false));
    begin(NAME, "DiscoverableTimeout", new Variant<>(new UInt32(180)));
    begin(NAME, "Pairable", new Variant<>(true));
    begin(NAME, "PairableTimeout", new Variant<>(new UInt32(0)));
    begin(NAME, "Discovering", new Variant<>(false));
    begin(NAME, "UUIDs", words(List.of()));
  }

  public boolean isPowered() {
    return isTrue(NAME, "Powered");
  }

  boolean isDiscovering() {
    return isTrue(NAME, "Discovering");
  }

  /** How often a client began to look for meters. */
  public int discoveryCount() {
    return discoveries.get();
  }

  /** Switched off: every connection ends first, as a real daemon does it. */
  public void powerOff() {
    peer.devices().forEach(PeerDevice::drop);
    change(NAME, "Discovering", new Variant<>(false));
    change(NAME, "Powered", new Variant<>(false));
  }

  public void powerOn() {
    change(NAME, "Powered", new Variant<>(true));
  }

  @Override
  public void StartDiscovery() {
    requirePower();
    discoveries.incrementAndGet();
    change(NAME, "Discovering", new Variant<>(true));
    peer.devices().forEach(PeerDevice::advertise);
  }

  @Override
  public void StopDiscovery() {
    requirePower();
    change(NAME, "Discovering", new Variant<>(false));
  }

  @Override
  public void SetDiscoveryFilter(Map<String, Variant<?>> filter) {
    requirePower();
  }

  void requirePower() {
    if (!isPowered()) {
      throw new org.bluez.Error.NotReady("Resource Not Ready");
    }
  }
}
