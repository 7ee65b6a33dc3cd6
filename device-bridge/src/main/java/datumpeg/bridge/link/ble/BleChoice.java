package datumpeg.bridge.link.ble;

import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Which characteristics of a meter are listened to.
 *
 * <p>Those the meter's profile names; without one those that describe themselves in a unit of
 * length or angle; if none does, all that report and are not about the meter itself. Never more
 * than eight: a meter of lengths and angles has one or two.
 */
final class BleChoice {
  private static final int MOST = 8;

  private BleChoice() {}

  /**
   * A characteristic with the name its bytes go by.
   *
   * @param channel its UUID; of a second one with the same UUID with {@code #2} behind it, so that
   *     their values never mix
   */
  record Chosen(String channel, BleCharacteristic characteristic) {}

  static List<Chosen> of(
      LinkAddress.Ble address, List<BleCharacteristic> all, Set<String> wantedUuids) {
    List<BleCharacteristic> chosen =
        wantedUuids.isEmpty() ? suitable(all) : named(all, wantedUuids);
    if (chosen.isEmpty()) {
      throw nothing(address, all, wantedUuids);
    }
    return named(chosen.subList(0, Math.min(MOST, chosen.size())));
  }

  private static List<BleCharacteristic> named(List<BleCharacteristic> all, Set<String> uuids) {
    return all.stream().filter(one -> one.reports() && uuids.contains(one.uuid())).toList();
  }

  private static List<BleCharacteristic> suitable(List<BleCharacteristic> all) {
    List<BleCharacteristic> reporting =
        all.stream()
            .filter(one -> one.reports() && !GattNames.HOUSEKEEPING.contains(one.service()))
            .toList();
    List<BleCharacteristic> described =
        reporting.stream()
            .filter(one -> PresentationFormat.of(one.presentation()).isPresent())
            .toList();
    return described.isEmpty() ? reporting : described;
  }

  private static List<Chosen> named(List<BleCharacteristic> chosen) {
    Map<String, Integer> seen = new HashMap<>();
    List<Chosen> named = new ArrayList<>();
    for (BleCharacteristic one : chosen) {
      int number = seen.merge(one.uuid(), 1, Integer::sum);
      named.add(new Chosen(number == 1 ? one.uuid() : one.uuid() + "#" + number, one));
    }
    return named;
  }

  private static LinkUnavailableException nothing(
      LinkAddress.Ble address, List<BleCharacteristic> all, Set<String> wanted) {
    String reporting =
        all.stream()
            .filter(BleCharacteristic::reports)
            .map(BleCharacteristic::uuid)
            .limit(MOST)
            .collect(Collectors.joining(", "));
    return new LinkUnavailableException(
        Obstacle.REFUSED,
        "The meter %s reports nothing %s; it has %s."
            .formatted(
                address.device(),
                wanted.isEmpty()
                    ? "that could be a length or an angle"
                    : "by the characteristic of its profile, " + String.join(", ", wanted),
                reporting.isEmpty() ? "no characteristic that reports" : reporting));
  }

  /**
   * What can be asked to see whether the meter still answers: the battery's level, else something
   * of the device information. Nothing of the maker's own, which a read might change.
   */
  static Optional<BleCharacteristic> heartbeat(List<BleCharacteristic> all, List<Chosen> chosen) {
    List<BleCharacteristic> askable =
        all.stream()
            .filter(one -> one.uses().contains(BleCharacteristic.Use.READ))
            .filter(one -> GattNames.HOUSEKEEPING.contains(one.service()))
            .filter(one -> chosen.stream().noneMatch(other -> other.characteristic().equals(one)))
            .toList();
    return askable.stream()
        .filter(one -> one.uuid().equals(GattNames.BATTERY_LEVEL))
        .findFirst()
        .or(() -> askable.stream().findFirst());
  }

  /** Where commands go: the first that takes them in the service of what is listened to. */
  static Optional<BleCharacteristic> commands(List<BleCharacteristic> all, List<Chosen> chosen) {
    return all.stream()
        .filter(BleCharacteristic::takesCommands)
        .filter(
            one ->
                chosen.stream()
                    .anyMatch(other -> other.characteristic().service().equals(one.service())))
        .findFirst();
  }
}
