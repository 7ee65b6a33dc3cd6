package datumpeg.analysis.check.enclosure;

import datumpeg.analysis.adjust.AdjustedLine;
import datumpeg.analysis.adjust.LineDifference;
import datumpeg.analysis.adjust.LineNetwork;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.SlipNotes;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.detail.Mullion;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.slip.SlipNetworks;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Spacing of the end-wall posts across an end, from the inner face of column A to that of column B,
 * read from post to post or running, and adjusted on a line. A straight distance to a column also
 * runs along the building by what the post stands in from it; that is taken off as planned.
 *
 * <p>Worked: column line A at 214 mm and a post at 3000 mm from the edge are 2786 mm apart across.
 */
public final class MullionSpacing implements Check {
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public MullionSpacing(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    List<AgreementTest> tests = new ArrayList<>();
    List<Reading> used = new ArrayList<>();
    List<Network> networks = new ArrayList<>();
    for (int end : List.of(1, setOut.building().portalFrameCount())) {
      List<PointName> row = row(end);
      List<Reading> all = stage.where(target -> isOf(row, target));
      List<Reading> current = stage.current(all);
      used.addAll(all);
      if (!current.isEmpty()) {
        String name = "the posts of end " + end;
        LineNetwork network =
            new LineNetwork(
                row.stream().map(PointName::text).toList(),
                current.stream().map(reading -> difference(reading, stage)).toList());
        AdjustedLine line = network.adjust();
        SlipNotes.ofNetwork(name, SlipNetworks.of(network), line.fit(), current, stage)
            .ifPresent(tests::add);
        networks.add(Network.of(name, line.fit(), current));
        found.addAll(outcomes(end, row, line, current, stage));
      }
    }
    return new CheckResult(found, List.of(), Map.of(), Map.of(), used, networks).with(tests);
  }

  private List<PointName> row(int end) {
    List<PointName> row = new ArrayList<>();
    row.add(PointName.at("base", new GridMark('A', end)));
    for (Mullion mullion : setOut.details().mullions()) {
      if (mullion.portalFrame() == end) {
        row.add(new PointName("mullion", mullion.place(), ""));
      }
    }
    row.add(PointName.at("base", new GridMark('B', end)));
    return row;
  }

  private static boolean isOf(List<PointName> row, Target target) {
    return target.quantity() == MeasuredQuantity.DISTANCE
        && row.containsAll(target.points())
        && target.points().stream().anyMatch(point -> point.feature().equals("mullion"));
  }

  private LineDifference difference(Reading reading, StageReadings stage) {
    PointName one = reading.target().first();
    PointName other = reading.target().second();
    Position from = setOut.position(one);
    Position to = setOut.position(other);
    double across = Math.abs(to.yMetres() - from.yMetres());
    double observed = reading.valueSi() - (from.distanceMetres(to) - across);
    boolean ascending = from.yMetres() < to.yMetres();
    PointName low = ascending ? one : other;
    PointName high = ascending ? other : one;
    Observation marked =
        stage.marked(
            stage.marked(stage.observation(reading, observed), low, "across", -1),
            high,
            "across",
            1);
    return new LineDifference(low.text(), high.text(), marked);
  }

  private List<Outcome> outcomes(
      int end,
      List<PointName> row,
      AdjustedLine line,
      List<Reading> readings,
      StageReadings stage) {
    List<Outcome> found = new ArrayList<>();
    for (int i = 1; i < row.size(); i++) {
      PointName from = row.get(i - 1);
      PointName to = row.get(i);
      if (line.connected(from.text(), to.text())) {
        double nominal = setOut.position(to).yMetres() - setOut.position(from).yMetres();
        found.add(
            outcomes.signed(
                "mullion-spacing",
                end + "/" + shortName(from) + "-" + shortName(to),
                OptionalDouble.of(nominal),
                line.difference(from.text(), to.text()),
                nominal,
                stage.evidence(readings)));
      }
    }
    return found;
  }

  /** A, M1, M2, B. */
  private static String shortName(PointName point) {
    return point.feature().equals("base")
        ? point.place().substring(0, 1)
        : point.place().substring(point.place().indexOf('.') + 1);
  }
}
