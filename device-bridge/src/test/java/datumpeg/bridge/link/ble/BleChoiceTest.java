package datumpeg.bridge.link.ble;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ble.BleCharacteristic.Use;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class BleChoiceTest {
  private static final String OURS = "00000001-0000-4c41-9b0c-d47a9e600001";
  private static final String ONE = "00000002-0000-4c41-9b0c-d47a9e600001";
  private static final String OTHER = "00000003-0000-4c41-9b0c-d47a9e600001";
  private static final Bytes METRES = Bytes.ofHex("10fc0127010000");

  /** Percent: nothing a length or an angle could be read by. */
  private static final Bytes PERCENT = Bytes.ofHex("0400ad27010000");

  private static final LinkAddress.Ble ADDRESS =
      (LinkAddress.Ble) LinkAddress.parse("ble:C0:FF:EE:00:00:01");

  private static BleCharacteristic one(
      String handle, String service, String uuid, Bytes presentation, Use... uses) {
    return new BleCharacteristic(handle, service, uuid, Set.of(uses), presentation);
  }

  private static List<String> handles(List<BleCharacteristic> all, Set<String> wanted) {
    return BleChoice.of(ADDRESS, all, wanted).stream()
        .map(chosen -> chosen.characteristic().handle())
        .toList();
  }

  @Test
  void thoseThatDescribeALengthComeBeforeThoseThatDoNot() {
    List<BleCharacteristic> all =
        List.of(
            one("a", OURS, ONE, Bytes.empty(), Use.NOTIFY),
            one("b", OURS, OTHER, METRES, Use.INDICATE),
            one("c", OURS, OTHER, PERCENT, Use.NOTIFY));
    assertEquals(List.of("b"), handles(all, Set.of()));
    assertEquals(List.of("a"), handles(all, Set.of(ONE)));
    assertEquals(List.of("a"), handles(all.subList(0, 1), Set.of()));
  }

  @Test
  void whatIsAboutTheMeterItselfIsNeverAMeasurement() {
    List<BleCharacteristic> all =
        List.of(
            one("battery", GattNames.assigned("180f"), ONE, METRES, Use.NOTIFY),
            one("written", OURS, OTHER, METRES, Use.WRITE));
    LinkUnavailableException refused =
        assertThrows(LinkUnavailableException.class, () -> BleChoice.of(ADDRESS, all, Set.of()));
    assertTrue(String.valueOf(refused.getMessage()).contains(ONE), refused.getMessage());
  }

  @Test
  void twoOfOneNameAreKeptApartAndNeverMoreThanEightAreListenedTo() {
    List<BleCharacteristic> many = new ArrayList<>();
    for (int i = 0; i < 5000; i++) {
      many.add(one("h" + i, OURS, ONE, Bytes.empty(), Use.NOTIFY));
    }
    List<BleChoice.Chosen> chosen = BleChoice.of(ADDRESS, many, Set.of());
    assertEquals(8, chosen.size());
    assertEquals(ONE, chosen.get(0).channel());
    assertEquals(ONE + "#2", chosen.get(1).channel());
    assertEquals(ONE + "#8", chosen.get(7).channel());
  }

  @Test
  void onlyWhatIsAboutTheMeterItselfIsAskedForASignOfLife() {
    BleCharacteristic own = one("own", OURS, ONE, Bytes.empty(), Use.READ, Use.NOTIFY);
    BleCharacteristic maker =
        one("maker", GattNames.assigned("180a"), OTHER, Bytes.empty(), Use.READ);
    BleCharacteristic battery =
        one(
            "battery",
            GattNames.assigned("180f"),
            GattNames.BATTERY_LEVEL,
            Bytes.empty(),
            Use.READ);
    assertTrue(BleChoice.heartbeat(List.of(own), List.of()).isEmpty());
    assertEquals(maker, BleChoice.heartbeat(List.of(own, maker), List.of()).orElseThrow());
    assertEquals(battery, BleChoice.heartbeat(List.of(maker, battery), List.of()).orElseThrow());
  }
}
