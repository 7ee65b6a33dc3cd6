package datumpeg.bridge.link.ble.tinyb;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import datumpeg.bridge.link.ble.BleCharacteristic;
import datumpeg.bridge.link.ble.BleCharacteristic.Use;
import datumpeg.bridge.link.ble.BleRefusal;
import datumpeg.bridge.link.ble.BleSighting;
import datumpeg.bridge.link.ble.GattNames;
import datumpeg.bridge.link.ble.Patience;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a child says before it is ready, or why it does not become so. One thread. */
final class TinybGreeting {
  private final String adapter;
  private final String device;
  private final Patience patience;
  private final List<BleSighting> heard;
  private final List<BleCharacteristic> characteristics = new ArrayList<>();

  /**
   * A greeting not heard yet.
   *
   * @param heard takes what was sighted
   */
  TinybGreeting(String adapter, String device, Patience patience, List<BleSighting> heard) {
    this.adapter = adapter;
    this.device = device;
    this.patience = patience;
    this.heard = heard;
  }

  List<BleCharacteristic> characteristics() {
    return characteristics;
  }

  /** Listens until the word comes, for this long at most. */
  void await(ChildProcess child, String word, Duration most) {
    long start = System.nanoTime();
    while (true) {
      Optional<ChildLine> line = next(child, most.minusNanos(System.nanoTime() - start));
      if (line.isEmpty()) {
        throw device.isEmpty()
            ? BleRefusal.noService("it does not answer", null)
            : BleRefusal.notConnected(device, "it did not answer in time", null);
      }
      if (line.get().word().equals(word)) {
        return;
      }
      take(line.get());
    }
  }

  private static Optional<ChildLine> next(ChildProcess child, Duration left) {
    try {
      return left.isNegative() ? Optional.empty() : child.next(left);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  private void take(ChildLine line) {
    switch (line.word()) {
      case "sighting" -> heard.add(BleSighting.of(line.part(0), line.words(2), line.number(1)));
      case "characteristic" -> characteristic(line);
      case "refused" -> throw refusal(line);
      case "end" ->
          throw BleRefusal.noService(
              "the process of the native library ended with status " + line.part(0), null);
      default -> {}
    }
  }

  private void characteristic(ChildLine line) {
    if (GattNames.isUuid(line.part(2))) {
      characteristics.add(
          new BleCharacteristic(
              line.part(0), line.part(1), line.part(2), uses(line.part(3)), line.bytes(4)));
    }
  }

  private static Set<Use> uses(String flags) {
    List<String> words = Arrays.asList(flags.split(","));
    Set<Use> uses = EnumSet.noneOf(Use.class);
    for (Use use : Use.values()) {
      if (words.contains(use.flag())) {
        uses.add(use);
      }
    }
    return uses;
  }

  private LinkUnavailableException refusal(ChildLine line) {
    String words = line.words(1);
    return switch (line.part(0)) {
      case "NO_LIBRARY" ->
          new LinkUnavailableException(
              Obstacle.MISSING,
              "The native library of the backend tinyb does not load: "
                  + BleSighting.clean(words.replaceFirst("\\.$", ""))
                  + ". The usual way to Bluetooth LE meters, without backend=tinyb, needs none.");
      case "NO_SERVICE" ->
          BleRefusal.noService(
              "it is not running, or there is no D-Bus system bus; on Linux: sudo systemctl start"
                  + " bluetooth",
              null);
      case "NO_ADAPTER" ->
          BleRefusal.noAdapter(adapter, words.isEmpty() ? List.of() : List.of(words.split(",")));
      case "SWITCHED_OFF" -> BleRefusal.switchedOff(words);
      case "NOT_HEARD" -> BleRefusal.notHeard(device, patience.discovery().toSeconds(), heard);
      default -> BleRefusal.notConnected(device, words, null);
    };
  }
}
