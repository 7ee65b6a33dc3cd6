package datumpeg.bridge.link.ble.peer;

import datumpeg.bridge.frame.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * An invented meter of the peer: one characteristic that describes itself, one that sends text, one
 * that takes commands, a battery. Thread-safe.
 */
public final class InventedMeter {
  public static final String ADDRESS = "C0:FF:EE:00:00:01";
  public static final String PRETENDER = "C0:FF:EE:00:00:66";
  public static final String SERVICE = "00000001-0000-4c41-9b0c-d47a9e600001";
  public static final String DISTANCE = "0000d157-0000-4c41-9b0c-d47a9e600001";
  public static final String TEXT = "00007e87-0000-4c41-9b0c-d47a9e600001";
  public static final String COMMAND = "0000c0de-0000-4c41-9b0c-d47a9e600001";
  private static final String BATTERY_SERVICE = "0000180f-0000-1000-8000-00805f9b34fb";
  private static final String BATTERY_LEVEL = "00002a19-0000-1000-8000-00805f9b34fb";

  /**
   * Format sint32 (0x10), exponent -4, unit metre (0x2701): Bluetooth SIG, Assigned Numbers; layout
   * of the seven bytes: Bluetooth Core Specification, volume 3, part G, 3.3.3.5.
   */
  public static final Bytes TENTHS_OF_MILLIMETRES = Bytes.ofHex("10fc0127010000");

  /** A notification carries 20 bytes where nothing else was agreed: the same, part F, 3.2.8. */
  private static final int NOTIFICATION_BYTES = 20;

  private final PeerDevice device;
  private final PeerCharacteristic distance;
  private final PeerCharacteristic text;
  private final PeerCharacteristic command;
  private final PeerCharacteristic battery;

  private InventedMeter(PeerDevice device, boolean describesItself) {
    this.device = device;
    PeerService ours = device.service(SERVICE);
    this.distance =
        describesItself
            ? ours.described(DISTANCE, TENTHS_OF_MILLIMETRES, "notify", "read")
            : ours.characteristic("0000d157-0000-4c41-9b0c-d47a9e60ffff", "read");
    this.text = ours.characteristic(TEXT, "indicate");
    this.command = ours.characteristic(COMMAND, "write");
    this.battery = device.service(BATTERY_SERVICE).characteristic(BATTERY_LEVEL, "read");
    battery.value(Bytes.ofHex("57"));
  }

  public static InventedMeter describingItself(BluezPeer peer) {
    return new InventedMeter(peer.device(ADDRESS, "Shed Rule\u001b[2J"), true);
  }

  /**
   * A device that claims the name, services and characteristics of the other, at another address.
   */
  public static InventedMeter pretending(BluezPeer peer) {
    return new InventedMeter(peer.device(PRETENDER, "Shed Rule\u001b[2J"), true);
  }

  public static InventedMeter ofText(BluezPeer peer) {
    return new InventedMeter(peer.device(ADDRESS, "Shed Text"), false);
  }

  public PeerDevice device() {
    return device;
  }

  public PeerCharacteristic distance() {
    return distance;
  }

  public PeerCharacteristic text() {
    return text;
  }

  public PeerCharacteristic command() {
    return command;
  }

  public PeerCharacteristic battery() {
    return battery;
  }

  /** Sends a distance as its description says; returns whether a client listens. */
  public boolean measures(double metres) {
    return distance.send(bytes(Math.round(metres * 10_000)));
  }

  /** The four bytes of a whole number, the least significant first. */
  public static Bytes bytes(long number) {
    int reversed = Integer.reverseBytes((int) number);
    return Bytes.ofHex(String.format(Locale.ROOT, "%08x", reversed));
  }

  /** Sends text, cut where a notification is full. */
  public void says(String words) {
    byte[] bytes = words.getBytes(StandardCharsets.UTF_8);
    for (int at = 0; at < bytes.length; at += NOTIFICATION_BYTES) {
      text.send(Bytes.of(bytes, at, Math.min(NOTIFICATION_BYTES, bytes.length - at)));
    }
  }
}
