package datumpeg.bridge.link.ble;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.frame.Bytes;
import org.junit.jupiter.api.Test;

class BleInboxTest {
  private final BleInbox inbox = new BleInbox(new SteppedClock());

  @Test
  void whatCameBeforeTheEndIsToldBeforeIt() throws InterruptedException {
    inbox.notified("h", Bytes.ofHex("01"));
    inbox.gone("switched off");
    inbox.gone("for another reason");
    inbox.notified("h", Bytes.ofHex("02"));
    assertEquals(
        Bytes.ofHex("01"), assertInstanceOf(BleArrival.Notified.class, inbox.next(0)).value());
    assertEquals(new BleArrival.Gone("switched off"), inbox.next(0));
    assertEquals(new BleArrival.Gone("switched off"), inbox.next(0), "it stays gone");
  }

  @Test
  void endlessNotificationsEndTheLinkAndNotTheMemory() throws InterruptedException {
    for (int i = 0; i < 1_000_000; i++) {
      inbox.notified("h", Bytes.ofHex("01"));
    }
    int kept = 0;
    BleArrival next = inbox.next(0);
    while (next instanceof BleArrival.Notified) {
      kept++;
      next = inbox.next(0);
    }
    assertEquals(BleInbox.MOST, kept);
    assertTrue(assertInstanceOf(BleArrival.Gone.class, next).why().contains("faster than"));
  }

  @Test
  void aValueLongerThanAnyCanBeEndsTheLink() throws InterruptedException {
    inbox.notified("h", Bytes.of(new byte[1 << 20]));
    assertTrue(assertInstanceOf(BleArrival.Gone.class, inbox.next(0)).why().contains("1048576"));
  }

  @Test
  void emptyValuesAndImpossibleLevelsAreNothing() throws InterruptedException {
    inbox.notified("h", Bytes.empty());
    inbox.battery(-1);
    inbox.battery(101);
    assertNull(inbox.next(0));
    inbox.battery(100);
    assertEquals(100, assertInstanceOf(BleArrival.Battery.class, inbox.next(0)).percent());
  }
}
