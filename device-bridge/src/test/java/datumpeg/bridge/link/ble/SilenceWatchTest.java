package datumpeg.bridge.link.ble;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SilenceWatchTest {
  private static final long SECOND = 1_000_000_000L;

  @Test
  void aMeterIsAskedAfterTenSecondsOfSilenceAndThenEveryTen() {
    SilenceWatch watch = new SilenceWatch(0);
    assertFalse(watch.isWorthAsking(9 * SECOND));
    assertTrue(watch.isWorthAsking(10 * SECOND));
    watch.restart(10 * SECOND);
    assertFalse(watch.isWorthAsking(19 * SECOND));
    assertTrue(watch.isWorthAsking(20 * SECOND));
    watch.restart(21 * SECOND);
    assertFalse(watch.isWorthAsking(30 * SECOND));
  }
}
