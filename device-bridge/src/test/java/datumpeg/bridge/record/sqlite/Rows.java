package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Locale;

/** Invented rows. */
final class Rows {
  static final JobKey JOB = JobKey.local("larkrise-01");
  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T08:15:30Z"), ZoneOffset.UTC);
  static final SessionStart START = new SessionStart("Amber", "0.1.0", CLOCK);

  private static final TimeOrderedIds IDS = new TimeOrderedIds(Clock.systemUTC());

  private Rows() {}

  /** A later session: the ids of chains sort by the time they began, to the millisecond. */
  static SessionStart startAfterSeconds(int seconds) {
    return new SessionStart("Amber", "0.1.0", Clock.offset(CLOCK, Duration.ofSeconds(seconds)));
  }

  /** A distance of 6 m and so many millimetres. */
  static ReadingEntry reading(int millimetres) {
    return readingBuilder(millimetres).build();
  }

  static ReadingEntry.Builder readingBuilder(int millimetres) {
    String text = String.format(Locale.ROOT, "%.3f", 6 + millimetres / 1000.0);
    return ReadingEntry.builder(IDS.next(), "arrival", "distance", "slab.A1-slab.A4")
        .value(text, "m", Double.parseDouble(text))
        .meter("laser", "", "")
        .readAt(OffsetDateTime.parse("2026-03-02T09:15:30+01:00"))
        .operator("Amber")
        .link("serial:/dev/ttyUSB0", "362e3030306d0d0a")
        .source("measure");
  }
}
