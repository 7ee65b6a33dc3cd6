package datumpeg.bridge.link.ble.peer;

import datumpeg.bridge.frame.Bytes;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** A characteristic of an invented meter. Thread-safe. */
public final class PeerCharacteristic extends PeerObject implements BluezInterfaces.Characteristic {
  static final String NAME = "org.bluez.GattCharacteristic1";

  private final List<String> flags;
  private final List<PeerDescriptor> descriptors = new CopyOnWriteArrayList<>();
  private final BlockingQueue<Bytes> written = new LinkedBlockingQueue<>();
  private final AtomicInteger subscriptions = new AtomicInteger();
  private volatile boolean subscribed;
  private volatile boolean mute;

  PeerCharacteristic(BluezPeer peer, String path, String uuid, List<String> flags) {
    super(peer, path);
    this.flags = flags;
    begin(NAME, "UUID", new Variant<>(uuid));
    begin(NAME, "Service", new Variant<>(new DBusPath(path.substring(0, path.lastIndexOf('/')))));
    begin(NAME, "Flags", words(flags));
    begin(NAME, "Value", new Variant<>(new byte[0]));
    if (flags.contains("notify") || flags.contains("indicate")) {
      begin(NAME, "Notifying", new Variant<>(false));
      descriptor("00002902-0000-1000-8000-00805f9b34fb", Bytes.ofHex("0000"));
    }
  }

  void descriptor(String uuid, Bytes value) {
    descriptors.add(
        new PeerDescriptor(
            peer, getObjectPath() + "/desc%04x".formatted(descriptors.size() + 1), uuid, value));
  }

  List<PeerDescriptor> descriptors() {
    return descriptors;
  }

  /** The value a read answers. */
  public void value(Bytes value) {
    begin(NAME, "Value", new Variant<>(value.toArray()));
  }

  /** Sends a notification or indication if a client asked for it; returns whether it did. */
  public boolean send(Bytes value) {
    if (!subscribed) {
      return false;
    }
    change(NAME, "Value", new Variant<>(value.toArray()));
    return true;
  }

  /** The daemon tells everybody on the bus a value, whether this client asked for it or not. */
  public void sendToAnybody(Bytes value) {
    change(NAME, "Value", new Variant<>(value.toArray()));
  }

  /** Where it stands on the bus. */
  public String path() {
    return getObjectPath();
  }

  /** Whether a client asked for notifications. */
  public boolean isSubscribed() {
    return subscribed;
  }

  /** How often a client asked for notifications. */
  public int subscriptionCount() {
    return subscriptions.get();
  }

  /** What clients wrote, oldest first. */
  public BlockingQueue<Bytes> written() {
    return written;
  }

  /** From now on a read gets no answer, as from a radio that hangs; or gets one again. */
  public void mute(boolean silent) {
    mute = silent;
  }

  /** The daemon found that its client is gone from the bus. */
  public void forget() {
    forgetSubscriber();
  }

  void forgetSubscriber() {
    if (subscribed) {
      subscribed = false;
      change(NAME, "Notifying", new Variant<>(false));
    }
  }

  @Override
  public byte[] ReadValue(Map<String, Variant<?>> options) {
    require("read");
    for (int wait = 0; mute && wait < 400; wait++) {
      pause();
    }
    Variant<?> value = Get(NAME, "Value");
    // A real daemon tells everybody what was read: a read looks like a notification.
    change(NAME, "Value", value);
    return (byte[]) value.getValue();
  }

  private static void pause() {
    try {
      Thread.sleep(50);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void WriteValue(byte[] value, Map<String, Variant<?>> options) {
    if (!flags.contains("write") && !flags.contains("write-without-response")) {
      throw new org.bluez.Error.NotPermitted("Write not permitted");
    }
    written.add(Bytes.of(value));
  }

  @Override
  public void StartNotify() {
    if (!flags.contains("notify") && !flags.contains("indicate")) {
      throw new org.bluez.Error.Failed("Operation is not supported");
    }
    subscriptions.incrementAndGet();
    subscribed = true;
    change(NAME, "Notifying", new Variant<>(true));
  }

  @Override
  public void StopNotify() {
    forgetSubscriber();
  }

  private void require(String flag) {
    if (!flags.contains(flag)) {
      throw new org.bluez.Error.NotPermitted(flag + " not permitted");
    }
  }
}
