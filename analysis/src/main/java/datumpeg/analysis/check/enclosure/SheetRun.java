package datumpeg.analysis.check.enclosure;

import datumpeg.analysis.adjust.AdjustedLine;
import datumpeg.analysis.adjust.LineDifference;
import datumpeg.analysis.adjust.LineNetwork;
import datumpeg.analysis.adjust.Observation;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.SlipNotes;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.slip.SlipNetworks;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * Run of the roof sheets: how far n sheets cover at eave and ridge against n times their cover
 * (creep), and how much further they run at the ridge than at the eave (skew).
 *
 * <p>Worked: ten sheets of 762 mm that cover 7628 mm at the eave and 7622 mm at the ridge creep +8
 * and +2 mm and are skew by −6 mm.
 */
public final class SheetRun implements Check {
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public SheetRun(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> all =
        setOut.building().sections().sheetCoverMetres().isPresent()
            ? stage.where(SheetRun::isRun)
            : List.of();
    List<Reading> used = stage.current(all);
    if (used.isEmpty()) {
      return CheckResult.of(List.of(), List.of(), List.of());
    }
    Set<String> stations = new LinkedHashSet<>();
    used.stream()
        .flatMap(reading -> reading.target().points().stream())
        .sorted()
        .forEach(point -> stations.add(point.text()));
    LineNetwork network =
        new LineNetwork(
            List.copyOf(stations), used.stream().map(reading -> run(reading, stage)).toList());
    AdjustedLine line = network.adjust();
    List<Outcome> found = new ArrayList<>();
    for (char side : new char[] {'A', 'B'}) {
      for (int sheet : sheets(side, used)) {
        found.addAll(after(side, sheet, line, stations, used, stage));
      }
    }
    return new CheckResult(
            found,
            List.of(),
            Map.of(),
            Map.of(),
            all,
            List.of(Network.of("the sheets", line.fit(), used)))
        .with(
            SlipNotes.ofNetwork("the sheets", SlipNetworks.of(network), line.fit(), used, stage)
                .stream()
                .toList());
  }

  private static LineDifference run(Reading reading, StageReadings stage) {
    PointName from = reading.target().first();
    PointName to = reading.target().second();
    Observation marked =
        stage.marked(stage.marked(stage.observation(reading), from, "along", -1), to, "along", 1);
    return new LineDifference(from.text(), to.text(), marked);
  }

  private static boolean isRun(Target target) {
    return target.quantity() == MeasuredQuantity.DISTANCE
        && target.first().feature().equals("sheet")
        && target.second().feature().equals("sheet")
        && target.first().part().equals(target.second().part())
        && mark(target.first()).letter() == mark(target.second()).letter();
  }

  private static GridMark mark(PointName sheet) {
    return sheet.gridMark().orElseThrow();
  }

  private static Set<Integer> sheets(char side, List<Reading> used) {
    TreeSet<Integer> sheets = new TreeSet<>();
    used.stream()
        .flatMap(reading -> reading.target().points().stream())
        .map(SheetRun::mark)
        .filter(mark -> mark.letter() == side && mark.number() > 1)
        .forEach(mark -> sheets.add(mark.number()));
    return sheets;
  }

  private List<Outcome> after(
      char side,
      int sheet,
      AdjustedLine line,
      Set<String> stations,
      List<Reading> used,
      StageReadings stage) {
    double cover = setOut.building().sections().sheetCoverMetres().orElseThrow();
    int laid = sheet - 1;
    List<Reading> behind =
        used.stream().filter(reading -> mark(reading.target().first()).letter() == side).toList();
    List<Outcome> found = new ArrayList<>();
    List<Linearised> runs = new ArrayList<>();
    for (String part : List.of("eave", "ridge")) {
      String start = new PointName("sheet", side + "1", part).text();
      String end = new PointName("sheet", side + Integer.toString(sheet), part).text();
      if (stations.contains(start) && stations.contains(end) && line.connected(start, end)) {
        Linearised run = line.linearisedDifference(start, end);
        runs.add(run);
        double perSheet = (run.value() - laid * cover) / laid * 1000;
        found.add(
            outcomes
                .signed(
                    "sheet-run",
                    side + "/" + laid + "/" + part,
                    OptionalDouble.of(laid * cover),
                    stage.atReference(run.estimate(), laid * cover),
                    laid * cover,
                    stage.evidence(behind))
                .withAside(LengthDisplay.signed(perSheet, 2) + " mm a sheet")
                .withFurtherAside(stage.temperatureWords(laid * cover)));
      }
    }
    if (runs.size() == 2) {
      found.add(
          outcomes.signedWithAside(
              "sheet-run",
              side + "/" + laid + "/skew",
              runs.get(1).minus(runs.get(0)).estimate(),
              laid * cover,
              stage.evidence(behind),
              "ridge less eave"));
    }
    return found;
  }
}
