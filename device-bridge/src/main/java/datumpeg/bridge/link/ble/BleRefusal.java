package datumpeg.bridge.link.ble;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Why a meter cannot be reached, in sentences that both backends share. */
public final class BleRefusal {
  private static final int MOST_NAMED = 8;

  private BleRefusal() {}

  /** There is no way to the system's Bluetooth service. */
  public static LinkUnavailableException noService(String what, @Nullable Throwable cause) {
    return new LinkUnavailableException(
        Obstacle.MISSING,
        "Bluetooth LE needs the system's Bluetooth service (BlueZ, on Linux): " + what + ".",
        cause);
  }

  public static LinkUnavailableException noAdapter(String named, List<String> present) {
    String what =
        present.isEmpty()
            ? "This machine has no Bluetooth adapter"
            : "There is no Bluetooth adapter "
                + named
                + "; this machine has "
                + String.join(", ", present);
    return new LinkUnavailableException(Obstacle.MISSING, what + ".");
  }

  public static LinkUnavailableException switchedOff(String adapter) {
    return new LinkUnavailableException(
        Obstacle.REFUSED,
        "The Bluetooth adapter " + adapter + " is switched off; on Linux: bluetoothctl power on.");
  }

  public static LinkUnavailableException notHeard(
      String device, long seconds, List<BleSighting> heard) {
    List<String> names =
        heard.stream()
            .limit(MOST_NAMED)
            .map(one -> (one.address() + " " + one.name()).strip())
            .toList();
    return new LinkUnavailableException(
        Obstacle.MISSING,
        "The meter %s was not heard within %d s; %s. Switch it on and bring it near."
            .formatted(
                device,
                seconds,
                names.isEmpty()
                    ? "nothing else was either"
                    : "heard were " + String.join(", ", names)));
  }

  /** The connection failed, for a reason in the service's own words. */
  public static LinkUnavailableException notConnected(
      String device, String words, @Nullable Throwable cause) {
    return new LinkUnavailableException(
        Obstacle.REFUSED,
        "The meter %s could not be connected: %s. Is it switched on, near, and free of another phone or computer?"
            .formatted(device, BleSighting.clean(words)),
        cause);
  }

  public static LinkUnavailableException notPermitted(String device, @Nullable Throwable cause) {
    return new LinkUnavailableException(
        Obstacle.NOT_PERMITTED,
        ("This user may not use Bluetooth, or the meter %s wants to be paired first; on Linux:"
                + " sudo usermod -aG bluetooth USER and log in again, or bluetoothctl pair %s.")
            .formatted(device, device),
        cause);
  }
}
