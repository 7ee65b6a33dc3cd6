package datumpeg.bridge.record.sqlite;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoUnit;

/** Times as the record writes them: UTC, always six decimals, so that text order is time order. */
final class Timestamps {
  private static final DateTimeFormatter SIX_DECIMALS =
      new DateTimeFormatterBuilder().appendInstant(6).toFormatter();

  private Timestamps() {}

  static Instant toMicroseconds(Instant instant) {
    return instant.truncatedTo(ChronoUnit.MICROS);
  }

  static String text(Instant instant) {
    return SIX_DECIMALS.format(instant);
  }

  /**
   * @throws java.time.DateTimeException if the text is not a time
   */
  static Instant parse(String text) {
    return Instant.parse(text);
  }
}
