package datumpeg.bridge.collect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.bridge.link.LinkClock;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class SteadyClockTest {
  private static final Instant START = Instant.parse("2026-03-02T08:15:00Z");

  private static final class SetClock implements LinkClock {
    private Instant now = START;
    private long nanos = -7_000;

    @Override
    public Instant now() {
      return now;
    }

    @Override
    public long monotonicNanos() {
      return nanos;
    }
  }

  @Test
  void aClockSetBackDoesNotReorder() {
    SetClock machine = new SetClock();
    SteadyClock steady = new SteadyClock(machine);
    machine.nanos += 2_000_000_000L;
    machine.now = START.minus(Duration.ofHours(1));
    assertEquals(START.plusSeconds(2), steady.now());
  }
}
