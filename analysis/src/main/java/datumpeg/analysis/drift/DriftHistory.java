package datumpeg.analysis.drift;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.LengthDisplay;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * All checks of the meters of a record, in time.
 *
 * @param checks in any order; kept by time
 */
public record DriftHistory(List<DatedCheck> checks) {
  public static final DriftHistory NONE = new DriftHistory(List.of());

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  public DriftHistory {
    checks = checks.stream().sorted(Comparator.comparing(DatedCheck::at)).toList();
  }

  /** The checks of one meter, by time. */
  public List<DatedCheck> of(String meter) {
    return checks.stream().filter(check -> check.meter().equals(meter)).toList();
  }

  /**
   * One note for each check that found a meter outside its stated accuracy, about every reading
   * taken with it since its last good check, before the bad one or after it. An undecided check is
   * neither good nor bad.
   */
  public List<Note> doubts(List<Reading> readings) {
    List<Note> notes = new ArrayList<>();
    for (DatedCheck bad : checks) {
      if (bad.check().verdict() == Verdict.NONCONFORMING && !isTold(bad)) {
        note(bad, readings).ifPresent(notes::add);
      }
    }
    return notes;
  }

  /** Of several bad checks with no good one between them the last tells. */
  private boolean isTold(DatedCheck bad) {
    return of(bad.meter()).stream()
        .filter(other -> other.at().isAfter(bad.at()))
        .filter(other -> other.check().verdict() != Verdict.UNDECIDED)
        .findFirst()
        .filter(next -> next.check().verdict() == Verdict.NONCONFORMING)
        .isPresent();
  }

  private Optional<Note> note(DatedCheck bad, List<Reading> readings) {
    Optional<Instant> before = good(bad).filter(at -> at.isBefore(bad.at())).reduce((a, b) -> b);
    Optional<Instant> after = good(bad).filter(at -> at.isAfter(bad.at())).findFirst();
    List<String> doubted =
        readings.stream()
            .filter(reading -> reading.meter().equals(bad.meter()))
            .filter(reading -> before.isEmpty() || reading.at().isAfter(before.get()))
            .filter(reading -> after.isEmpty() || reading.at().isBefore(after.get()))
            .map(Reading::id)
            .toList();
    return doubted.isEmpty()
        ? Optional.empty()
        : Optional.of(new Note(Note.Kind.METER_OUTSIDE, sentence(bad, before, doubted), doubted));
  }

  private Stream<Instant> good(DatedCheck bad) {
    return of(bad.meter()).stream()
        .filter(check -> check.check().verdict() == Verdict.CONFORMING)
        .map(DatedCheck::at);
  }

  private static String sentence(DatedCheck bad, Optional<Instant> before, List<String> doubted) {
    MeterCheck check = bad.check();
    return "The meter "
        + bad.meter()
        + " was outside its stated accuracy when it was checked on "
        + DAY.format(bad.at())
        + " ("
        + check.method().text()
        + "): error "
        + shown(check, check.error().value(), true)
        + " ± "
        + shown(check, check.error().expanded(), false)
        + ", where one reading may be off by "
        + shown(check, check.limit(), false)
        + ". "
        + doubted.size()
        + (doubted.size() == 1 ? " reading was" : " readings were")
        + " taken with it since its last good check ("
        + before.map(DAY::format).orElse("none is known")
        + "): measure again with a meter that is right, or have the engineer decide.";
  }

  /** An error as a person reads it. */
  public static String shown(MeterCheck check, double value, boolean signed) {
    boolean angle = check.method().dimension() == Dimension.ANGLE;
    double number = angle ? StrictMath.toDegrees(value) : value * 1000;
    int places = angle ? 3 : 1;
    return (signed ? LengthDisplay.signed(number, places) : LengthDisplay.decimal(number, places))
        + (angle ? "°" : " mm");
  }
}
