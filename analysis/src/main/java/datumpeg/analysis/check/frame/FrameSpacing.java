package datumpeg.analysis.check.frame;

import datumpeg.analysis.adjust.AdjustedLine;
import datumpeg.analysis.adjust.LineDifference;
import datumpeg.analysis.adjust.LineNetwork;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.Evidence;
import datumpeg.analysis.check.FrameRow;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.SlipNotes;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.slip.SlipNetworks;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
public final class FrameSpacing implements Check {
  private final Job job;
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public FrameSpacing(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> used = stage.where(FrameRow::holds);
    if (used.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    Map<FrameRow, List<Reading>> rows = new TreeMap<>();
    used.forEach(
        reading ->
            rows.computeIfAbsent(FrameRow.of(reading.target().first()), row -> new ArrayList<>())
                .add(reading));
    rows.replaceAll((row, readings) -> stage.current(readings));
    AdjustedLine line = network(rows, stage).adjust();
    List<Outcome> found = new ArrayList<>();
    rows.forEach((row, readings) -> found.addAll(spacings(row, line, stage.evidence(readings))));
    found.addAll(matches(rows, line, stage));
    found.addAll(overallLengths(rows, line, stage));
    return new CheckResult(
        found,
        notes(rows, line, stage),
        Map.of(),
        Map.of(),
        used,
        List.of(Network.of("the rows of frames", line.fit(), used)));
  }

  private LineNetwork network(Map<FrameRow, List<Reading>> rows, StageReadings stage) {
    List<String> stations = new ArrayList<>();
    List<LineDifference> differences = new ArrayList<>();
    rows.forEach(
        (row, readings) -> {
          setOut.portalFrameNumbers().forEach(number -> stations.add(row.station(number)));
          readings.forEach(reading -> differences.add(difference(row, reading, stage)));
        });
    return new LineNetwork(stations, differences);
  }

  private LineDifference difference(FrameRow row, Reading reading, StageReadings stage) {
    int from = FrameRow.number(reading.target().first());
    int to = FrameRow.number(reading.target().second());
    double centreToCentre = reading.valueSi() - FrameRow.faceOffsetMetres(reading.target(), setOut);
    return new LineDifference(
        row.station(from), row.station(to), marked(reading, centreToCentre, stage));
  }

  /** A spacing answers to its first mark moving along with −1, to its second with 1. */
  private static Observation marked(Reading reading, double centreToCentre, StageReadings stage) {
    Observation observed = stage.observation(reading, centreToCentre);
    PointName from = reading.target().first();
    PointName to = reading.target().second();
    return stage.marked(stage.marked(observed, from, "along", -1), to, "along", 1);
  }

  private List<Outcome> spacings(FrameRow row, AdjustedLine line, Evidence evidence) {
    List<Outcome> found = new ArrayList<>();
    for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
      if (line.connected(row.station(number), row.station(number + 1))) {
        double nominal = nominal(number);
        found.add(
            outcomes.signed(
                "frame-spacing",
                row.spacing(number, number + 1),
                OptionalDouble.of(nominal),
                line.difference(row.station(number), row.station(number + 1)),
                nominal,
                evidence));
      }
    }
    return found;
  }

  private double nominal(int number) {
    return setOut.portalFrameXMetres(number + 1) - setOut.portalFrameXMetres(number);
  }

  /** Eave spacing − base spacing of the same bay and side. */
  private List<Outcome> matches(
      Map<FrameRow, List<Reading>> rows, AdjustedLine line, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (String side : List.of("A", "B")) {
      FrameRow base = new FrameRow("base", side);
      FrameRow eave = new FrameRow("eave", side);
      if (!rows.containsKey(base) || !rows.containsKey(eave)) {
        continue;
      }
      List<Reading> both = new ArrayList<>(rows.getOrDefault(base, List.of()));
      both.addAll(rows.getOrDefault(eave, List.of()));
      for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
        if (line.connected(base.station(number), base.station(number + 1))
            && line.connected(eave.station(number), eave.station(number + 1))) {
          found.add(match(base, eave, number, line, stage.evidence(both)));
        }
      }
    }
    return found;
  }

  private Outcome match(
      FrameRow base, FrameRow eave, int number, AdjustedLine line, Evidence evidence) {
    Linearised difference =
        line.linearisedDifference(eave.station(number), eave.station(number + 1))
            .minus(line.linearisedDifference(base.station(number), base.station(number + 1)));
    String side = base.side();
    return outcomes.signedWithAside(
        "spacing-match",
        side + number + "-" + side + (number + 1),
        difference.estimate(),
        nominal(number),
        evidence,
        "");
  }

  /** End face to end face of one wall's end columns at their feet. */
  private List<Outcome> overallLengths(
      Map<FrameRow, List<Reading>> rows, AdjustedLine line, StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    int last = setOut.building().portalFrameCount();
    rows.forEach(
        (row, readings) -> {
          if (row.feature().equals("base") && line.connected(row.station(1), row.station(last))) {
            found.add(
                outcomes.signed(
                    "overall-length",
                    row.side(),
                    OptionalDouble.of(setOut.overallLengthMetres()),
                    line.difference(row.station(1), row.station(last))
                        .shifted(job.setOut().building().sections().columnWidthMetres()),
                    setOut.overallLengthMetres(),
                    stage.evidence(readings)));
          }
        });
    return found;
  }

  /** Contradictions, looked for row by row so that the row is named. */
  private List<Note> notes(
      Map<FrameRow, List<Reading>> rows, AdjustedLine all, StageReadings stage) {
    List<Note> notes = new ArrayList<>();
    rows.forEach(
        (row, readings) -> {
          LineNetwork network = network(Map.of(row, readings), stage);
          SlipNotes.ofNetwork(
                  row.side().isEmpty()
                      ? "the apexes"
                      : "the " + row.feature() + "s of side " + row.side(),
                  SlipNetworks.of(network),
                  rows.size() == 1 ? all.fit() : network.adjust().fit(),
                  readings)
              .ifPresent(notes::add);
        });
    return notes;
  }
}
