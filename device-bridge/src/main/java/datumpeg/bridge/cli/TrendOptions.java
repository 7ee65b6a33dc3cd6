package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.PointPer;
import datumpeg.analysis.trend.RoundChoice;
import datumpeg.analysis.trend.TrendFilter;
import datumpeg.analysis.trend.TrendQuestion;
import datumpeg.analysis.trend.TrendScale;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.mistake.Nearest;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options by which {@code trend} and {@code compare} choose outcomes. */
final class TrendOptions {
  /** What numbers are given in. */
  enum Scale {
    MEASURED,
    PERMITTED
  }

  @Option(names = "--check", paramLabel = "CHECK", description = "Only this check.")
  String check = "";

  @Option(
      names = "--target",
      paramLabel = "TARGET",
      description = "Only this target, or all that end so if it begins with /, such as /across.")
  String target = "";

  @Option(names = "--stage", paramLabel = "STAGE", description = "Only this stage.")
  String stage = "";

  @Option(names = "--crew", paramLabel = "CREW", description = "Only jobs of this crew.")
  String crew = "";

  @Option(names = "--site", paramLabel = "SITE", description = "Only jobs at this site.")
  String site = "";

  @Option(names = "--meter", paramLabel = "METER", description = "Only what this meter read.")
  String meter = "";

  @Option(
      names = "--slab",
      paramLabel = "LAYER",
      description = "Only jobs whose slab was laid by this firm.")
  String slabBy = "";

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "Only what was measured on this day (UTC) or later, such as 2026-03-02.")
  @Nullable LocalDate from;

  @Option(
      names = "--to",
      paramLabel = "DATE",
      description = "Only what was measured on this day (UTC) or earlier.")
  @Nullable LocalDate to;

  @Option(
      names = "--round",
      paramLabel = "ROUND",
      description = "first: as the work gave it (otherwise so); last: as it was delivered.")
  String round = "first";

  @Option(
      names = "--scale",
      paramLabel = "SCALE",
      description =
          "measured: as outcomes are shown (otherwise so); permitted: in per cent of the permitted"
              + " deviation, so that different buildings compare.")
  String scale = "measured";

  TrendQuestion question(String ofCheck, PointPer per) {
    return new TrendQuestion(
        filter(ofCheck),
        Choice.of(RoundChoice.values(), "--round", round),
        per,
        Choice.of(Scale.values(), "--scale", scale) == Scale.MEASURED
            ? TrendScale.AS_MEASURED
            : TrendScale.OF_PERMITTED);
  }

  TrendFilter filter(String ofCheck) {
    return new TrendFilter(
        ofCheck,
        target,
        stage,
        crew,
        site,
        meter,
        slabBy,
        Optional.ofNullable(from).map(TrendOptions::start),
        Optional.ofNullable(to).map(day -> start(day.plusDays(1))));
  }

  private static Instant start(LocalDate day) {
    return day.atStartOfDay(ZoneOffset.UTC).toInstant();
  }

  /**
   * Looks at every name that was given.
   *
   * @throws InputException if no outcome has it; the message names the nearest
   */
  void requireKnown(List<DatedOutcome> outcomes) {
    if (!check.isEmpty() && !CheckNames.ALL.contains(check)) {
      throw new InputException(
          "There is no check '" + check + "'; " + Nearest.hint(check, CheckNames.ALL) + ".");
    }
    known("--crew", crew, outcomes, one -> Stream.of(one.job().crew()));
    known("--site", site, outcomes, one -> Stream.of(one.job().site()));
    known("--slab", slabBy, outcomes, one -> Stream.of(one.job().slabBy()));
    known("--meter", meter, outcomes, one -> one.meters().stream());
    known("--stage", stage, outcomes, one -> Stream.of(one.stage()));
  }

  private static void known(
      String option,
      String wanted,
      List<DatedOutcome> outcomes,
      Function<DatedOutcome, Stream<String>> names) {
    if (wanted.isEmpty() || outcomes.isEmpty()) {
      return;
    }
    Set<String> found = new TreeSet<>();
    outcomes.stream().flatMap(names).filter(name -> !name.isEmpty()).forEach(found::add);
    if (!found.contains(wanted)) {
      throw new InputException(
          "No outcome in the record has "
              + option
              + " '"
              + wanted
              + "'; "
              + Nearest.hint(wanted, found)
              + ".");
    }
  }
}
