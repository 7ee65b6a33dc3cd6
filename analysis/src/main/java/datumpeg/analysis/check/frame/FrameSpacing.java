package datumpeg.analysis.check.frame;

import datumpeg.analysis.adjust.AdjustedLine;
import datumpeg.analysis.adjust.LineDifference;
import datumpeg.analysis.adjust.LineNetwork;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.FrameRow;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.SlipNotes;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.slip.SlipNetworks;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Spacing of frames at base, eave or apex from chained or running distances, adjusted on a line;
 * eave against base; overall length.
 *
 * <p>Two running distances from one end share that end's reading error: neighbouring bays correlate
 * at −0.5, and a bay is known to √2 times one reading. All rows are adjusted together, so that
 * errors one meter and session shares are known to be shared. Worked: running 6.003 and 12.001 m
 * from frame 1 give bays of 6.003 and 5.998 m.
 */
final class FrameSpacing {
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  FrameSpacing(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  /** The readings of the rows that go together, row by row. */
  List<Reading> current(StageReadings stage) {
    return rows(stage).values().stream().flatMap(List::stream).toList();
  }

  private static Map<FrameRow, List<Reading>> rows(StageReadings stage) {
    Map<FrameRow, List<Reading>> rows = new TreeMap<>();
    for (Reading reading : stage.where(FrameRow::holds)) {
      rows.computeIfAbsent(FrameRow.of(reading.target().first()), row -> new ArrayList<>())
          .add(reading);
    }
    rows.replaceAll((row, readings) -> stage.current(readings));
    return rows;
  }

  CheckResult of(StageReadings stage, FrameNetwork frames) {
    Map<FrameRow, List<Reading>> rows = rows(stage);
    if (rows.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    AdjustedLine line = network(rows, stage).adjust();
    Spacings spacings = new Spacings(rows, line, frames);
    List<Outcome> found = new ArrayList<>();
    rows.forEach((row, readings) -> found.addAll(spacings(row, spacings, stage)));
    List<Outcome> derived = derived(spacings, stage);
    found.addAll(derived);
    found.addAll(matches(spacings, stage));
    found.addAll(overallLengths(rows, spacings, stage));
    List<Reading> current = rows.values().stream().flatMap(List::stream).toList();
    return new CheckResult(
            found,
            atHeight(derived).stream().toList(),
            Map.of(),
            Map.of(),
            stage.where(FrameRow::holds),
            frames.holds(current)
                ? List.of()
                : List.of(Network.of("the rows of frames", line.fit(), current)))
        .with(tests(rows, line, stage));
  }

  private LineNetwork network(Map<FrameRow, List<Reading>> rows, StageReadings stage) {
    List<String> stations = new ArrayList<>();
    List<LineDifference> differences = new ArrayList<>();
    rows.forEach(
        (row, readings) -> {
          List<String> ofRow = setOut.portalFrameNumbers().stream().map(row::station).toList();
          stations.addAll(ofRow);
          readings.forEach(reading -> differences.add(difference(ofRow, reading, stage)));
        });
    return new LineNetwork(stations, differences);
  }

  private LineDifference difference(List<String> stations, Reading reading, StageReadings stage) {
    int from = FrameRow.number(reading.target().first());
    int to = FrameRow.number(reading.target().second());
    double centreToCentre = reading.valueSi() - FrameRow.faceOffsetMetres(reading.target(), setOut);
    Observation observed = stage.observation(reading, centreToCentre);
    observed = stage.marked(observed, reading.target().first(), "along", -1);
    observed = stage.marked(observed, reading.target().second(), "along", 1);
    return new LineDifference(stations.get(from - 1), stations.get(to - 1), observed);
  }

  private List<Outcome> spacings(FrameRow row, Spacings spacings, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
      Optional<Linearised> observed = spacings.observed(row, number, number + 1);
      if (observed.isPresent()) {
        Linearised decided = spacings.decided(row, number, number + 1).orElse(observed.get());
        found.add(
            spacing(row, number, decided.estimate(), spacings.readings(row), stage)
                .withAside(
                    Adjusted.aside(
                        observed.get().estimate().shifted(-nominal(number)),
                        decided.estimate().shifted(-nominal(number))))
                .withFurtherAside(temperature(row, number, stage)));
      }
    }
    return found;
  }

  private Outcome spacing(
      FrameRow row, int number, Estimate value, List<Reading> behind, StageReadings stage) {
    return outcomes.signed(
        "frame-spacing",
        row.spacing(number, number + 1),
        OptionalDouble.of(nominal(number)),
        stage.atReference(value, steelMetres(row, number)),
        nominal(number),
        stage.evidence(behind));
  }

  /** Feet stand on concrete; aloft, purlins and girts hold the spacing. */
  private double steelMetres(FrameRow row, int number) {
    return row.feature().equals("base") ? 0 : nominal(number);
  }

  private String temperature(FrameRow row, int number, StageReadings stage) {
    double steel = steelMetres(row, number);
    return steel == 0 ? "" : stage.temperatureWords(steel);
  }

  /** Spacings at the eaves that nobody read there: they follow from the feet and the leans. */
  private List<Outcome> derived(Spacings spacings, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (String side : List.of("A", "B")) {
      FrameRow eave = new FrameRow("eave", side);
      for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
        Optional<Linearised> value = spacings.derived(eave, number, number + 1);
        if (value.isPresent()) {
          List<Reading> behind = spacings.behindDerived(eave, number, number + 1);
          Outcome outcome = spacing(eave, number, value.get().estimate(), behind, stage);
          found.add(
              outcome
                  .withAside("follows from feet and leans; not read at height")
                  .withFurtherAside(temperature(eave, number, stage))
                  .withRemedy(
                      outcome.is(Verdict.UNDECIDED)
                          ? "Measure " + atHeight(outcome) + " itself, from a safe platform."
                          : ""));
        }
      }
    }
    return found;
  }

  /** A reading at height is asked for only where what follows from below does not decide. */
  private static Optional<Note> atHeight(List<Outcome> derived) {
    List<String> open =
        derived.stream()
            .filter(outcome -> outcome.is(Verdict.UNDECIDED))
            .map(FrameSpacing::atHeight)
            .toList();
    return open.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Note(
                Note.Kind.NEXT_MEASUREMENT,
                "Feet and leans do not decide every spacing at the eaves. Read at height only: "
                    + String.join(", ", open)
                    + ". From a platform or scaffold that is safe to work from, never from the"
                    + " steel.",
                List.of()));
  }

  /** The distance at the eaves that a spacing such as A1-A2/eave is. */
  private static String atHeight(Outcome spacing) {
    String[] ends = spacing.target().substring(0, spacing.target().indexOf('/')).split("-", -1);
    return TargetWords.named("eave." + ends[0] + "-eave." + ends[1]);
  }

  private double nominal(int number) {
    return setOut.portalFrameXMetres(number + 1) - setOut.portalFrameXMetres(number);
  }

  /** Eave spacing − base spacing of the same bay and side. */
  private List<Outcome> matches(Spacings spacings, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (String side : List.of("A", "B")) {
      FrameRow base = new FrameRow("base", side);
      FrameRow eave = new FrameRow("eave", side);
      for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
        Optional<Linearised> difference = spacings.match(base, eave, number, number + 1);
        if (difference.isPresent()) {
          found.add(
              outcomes.signedWithAside(
                  "spacing-match",
                  side + number + "-" + side + (number + 1),
                  stage.atReference(difference.get().estimate(), nominal(number)),
                  nominal(number),
                  stage.evidence(spacings.behindMatch(base, eave, number, number + 1)),
                  temperature(eave, number, stage)));
        }
      }
    }
    return found;
  }

  /** End face to end face of one wall's end columns at their feet. */
  private List<Outcome> overallLengths(
      Map<FrameRow, List<Reading>> rows, Spacings spacings, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    int last = setOut.building().portalFrameCount();
    double faces = setOut.building().sections().columnWidthMetres();
    rows.forEach(
        (row, readings) -> {
          if (row.feature().equals("base")) {
            spacings
                .best(row, 1, last)
                .ifPresent(
                    length ->
                        found.add(
                            outcomes.signed(
                                "overall-length",
                                row.side(),
                                OptionalDouble.of(setOut.overallLengthMetres()),
                                length.estimate().shifted(faces),
                                setOut.overallLengthMetres(),
                                stage.evidence(readings))));
          }
        });
    return found;
  }

  /** Contradictions are looked for row by row, so that the row is named. */
  private List<AgreementTest> tests(
      Map<FrameRow, List<Reading>> rows, AdjustedLine all, StageReadings stage) {
    List<AgreementTest> tests = new ArrayList<>();
    rows.forEach(
        (row, readings) -> {
          LineNetwork network = network(Map.of(row, readings), stage);
          if (network.redundancy() == 0) {
            return;
          }
          SlipNotes.ofNetwork(
                  row.side().isEmpty()
                      ? "the apexes"
                      : "the " + row.feature() + "s of side " + row.side(),
                  SlipNetworks.of(network),
                  rows.size() == 1 ? all.fit() : network.adjust().fit(),
                  readings,
                  stage)
              .ifPresent(tests::add);
        });
    return tests;
  }
}
