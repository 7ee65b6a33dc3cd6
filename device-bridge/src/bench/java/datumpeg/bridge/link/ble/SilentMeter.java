package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.ble.peer.BluezPeer;
import datumpeg.bridge.link.ble.peer.InventedMeter;
import datumpeg.bridge.link.ble.peer.PrivateBus;
import java.nio.file.Path;

/**
 * The tests' own {@code org.bluez} on a bus of its own, with an invented meter that is there and
 * says nothing, for {@code idle-collect.sh}. Prints the bus's address and the meter's link, then
 * stays until its standard input ends. Argument: a folder for the bus.
 */
public final class SilentMeter {
  private SilentMeter() {}

  public static void main(String[] arguments) throws Exception {
    try (PrivateBus bus = PrivateBus.start(Path.of(arguments[0]));
        BluezPeer peer = BluezPeer.start(bus.address())) {
      InventedMeter.describingItself(peer);
      System.out.println(bus.address());
      System.out.println("ble:" + InventedMeter.ADDRESS);
      while (System.in.read() >= 0) {
        // only its end counts
      }
    }
  }
}
