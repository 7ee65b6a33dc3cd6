package datumpeg.analysis.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.uncertainty.Estimate;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DriftHistoryTest {
  private static final Instant START = Instant.parse("2026-03-01T08:00:00Z");

  private static Instant hour(double hours) {
    return START.plusSeconds((long) (3600 * hours));
  }

  private static DatedCheck check(String meter, double hour, Verdict verdict) {
    return new DatedCheck(
        meter,
        hour(hour),
        new MeterCheck(
            CheckMethod.KNOWN_DISTANCE,
            new Estimate(0.0032, 0.0004),
            10,
            0.0015,
            0,
            verdict,
            OptionalDouble.empty()));
  }

  /** One an hour from 0 on, named by its hour. */
  private static List<Reading> readings(String meter, int count) {
    return IntStream.range(0, count)
        .mapToObj(
            hour ->
                new Reading(
                    meter + hour,
                    "arrival",
                    Target.parse(MeasuredQuantity.DISTANCE, "slab.A1-slab.A4"),
                    18,
                    0,
                    meter,
                    "session",
                    "",
                    OptionalDouble.empty(),
                    1,
                    hour(hour),
                    "",
                    ""))
        .toList();
  }

  @Test
  void everyReadingSinceTheLastGoodCheckIsNamed() {
    DriftHistory history =
        new DriftHistory(
            List.of(
                check("laser", 6.5, Verdict.NONCONFORMING),
                check("laser", 1.5, Verdict.CONFORMING),
                check("laser", 3.5, Verdict.UNDECIDED),
                check("tape", 2.5, Verdict.CONFORMING)));
    List<Note> notes = history.doubts(readings("laser", 9));
    assertEquals(1, notes.size());
    assertEquals(Note.Kind.METER_OUTSIDE, notes.get(0).kind());
    assertEquals(
        List.of("laser2", "laser3", "laser4", "laser5", "laser6", "laser7", "laser8"),
        notes.get(0).readingIds());
    String text = notes.get(0).text();
    assertTrue(text.contains("error +3.2 mm ± 0.8 mm"), text);
    assertTrue(text.contains("2026-03-01 14:30 UTC"), text);
    assertTrue(text.contains("last good check (2026-03-01 09:30 UTC)"), text);
    assertEquals(List.of(), history.doubts(readings("tape", 9)));
  }

  @Test
  void aGoodCheckAfterwardsEndsTheDoubtAndSeveralBadOnesAreToldOnce() {
    DriftHistory history =
        new DriftHistory(
            List.of(
                check("laser", 1.5, Verdict.NONCONFORMING),
                check("laser", 2.5, Verdict.NONCONFORMING),
                check("laser", 4.5, Verdict.CONFORMING)));
    List<Note> notes = history.doubts(readings("laser", 9));
    assertEquals(1, notes.size());
    assertEquals(
        List.of("laser0", "laser1", "laser2", "laser3", "laser4"), notes.get(0).readingIds());
    assertTrue(notes.get(0).text().contains("none is known"), notes.get(0).text());
  }

  @Test
  void withoutBadChecksOrReadingsNothingIsSaid() {
    assertEquals(List.of(), DriftHistory.NONE.doubts(readings("laser", 3)));
    assertEquals(
        List.of(),
        new DriftHistory(List.of(check("laser", 1, Verdict.UNDECIDED)))
            .doubts(readings("laser", 3)));
    assertEquals(
        List.of(),
        new DriftHistory(List.of(check("laser", 1, Verdict.NONCONFORMING))).doubts(List.of()));
  }
}
