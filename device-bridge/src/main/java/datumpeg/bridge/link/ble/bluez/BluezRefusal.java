package datumpeg.bridge.link.ble.bluez;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import datumpeg.bridge.link.ble.BleRefusal;
import datumpeg.bridge.link.ble.bluez.BluezBus.RefusedException;

/** Turns what BlueZ answered into a sentence, by the name of the error and never by its text. */
final class BluezRefusal {
  private BluezRefusal() {}

  static LinkUnavailableException of(String device, RefusedException refused) {
    return switch (refused.error()) {
      case "org.bluez.Error.NotReady" ->
          BleRefusal.notConnected(device, "the adapter is not ready", refused);
      case "org.bluez.Error.InProgress" ->
          new LinkUnavailableException(
              Obstacle.BUSY,
              "The meter " + device + " is being connected by another program; try again.",
              refused);
      case "org.bluez.Error.AuthenticationFailed",
          "org.bluez.Error.AuthenticationRejected",
          "org.bluez.Error.AuthenticationCanceled",
          "org.bluez.Error.AuthenticationTimeout",
          "org.bluez.Error.NotAuthorized",
          "org.bluez.Error.NotPermitted",
          "org.freedesktop.DBus.Error.AccessDenied" ->
          BleRefusal.notPermitted(device, refused);
      default -> BleRefusal.notConnected(device, String.valueOf(refused.getMessage()), refused);
    };
  }
}
