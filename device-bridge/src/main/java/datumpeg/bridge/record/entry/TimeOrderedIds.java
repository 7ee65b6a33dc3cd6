package datumpeg.bridge.record.entry;

import com.fasterxml.uuid.UUIDClock;
import com.fasterxml.uuid.impl.TimeBasedEpochGenerator;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.UUID;

/**
 * Ids that sort by the time they were given out: UUIDs of version 7 (RFC 9562, section 5.7).
 * Thread-safe.
 */
public final class TimeOrderedIds {
  private final TimeBasedEpochGenerator generator;

  public TimeOrderedIds(Clock clock) {
    this.generator =
        new TimeBasedEpochGenerator(
            new SecureRandom(),
            new UUIDClock() {
              @Override
              public long currentTimeMillis() {
                return clock.millis();
              }
            });
  }

  public UUID next() {
    return generator.generate();
  }
}
