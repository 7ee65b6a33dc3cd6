package datumpeg.analysis.check.enclosure;

import datumpeg.analysis.adjust.AdjustedLevels;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.LevelledPoints;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.detail.Gutter;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Height of a gutter above its lowest end, against its design fall: + = higher than the string. The
 * reference is the levelled point nearest the outlet.
 *
 * <p>Worked: 12 m from the outlet a fall of 1:500 stands 24 mm above it.
 */
public final class GutterFall implements Check {
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public GutterFall(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    LevelledPoints gutters = LevelledPoints.of("the gutters", Set.of("gutter"), setOut, stage);
    List<Outcome> found = new ArrayList<>();
    List<Note> notes = new ArrayList<>(gutters.notes());
    gutters
        .levels()
        .ifPresent(
            levels -> {
              for (char side : new char[] {'A', 'B'}) {
                List<String> points =
                    levels.names().stream()
                        .filter(name -> name.startsWith("gutter." + side))
                        .sorted(Comparator.comparingDouble(this::x))
                        .toList();
                side(side, points, levels, gutters, stage, found, notes);
              }
            });
    return new CheckResult(
            found, notes, Map.of(), Map.of(), gutters.used(), gutters.network().stream().toList())
        .with(gutters.test().stream().toList());
  }

  private double x(String name) {
    return setOut.position(PointName.parse(name).orElseThrow()).xMetres();
  }

  private void side(
      char side,
      List<String> points,
      AdjustedLevels levels,
      LevelledPoints gutters,
      StageReadings stage,
      List<Outcome> found,
      List<Note> notes) {
    Gutter gutter = setOut.details().gutters().get(side);
    if (points.size() < 2) {
      return;
    }
    if (gutter == null) {
      notes.add(
          new Note(
              Note.Kind.UNDETERMINED,
              "The job file says nothing of gutter "
                  + side
                  + ": without [gutters."
                  + side
                  + "] outlet and fall its levels cannot be judged.",
              List.of()));
      return;
    }
    String outlet =
        points.stream()
            .min(Comparator.comparingDouble(name -> Math.abs(x(name) - gutter.outletMetres())))
            .orElseThrow();
    for (String point : points) {
      if (!point.equals(outlet)) {
        found.add(above(point, outlet, gutter, levels, gutters, stage));
      }
    }
    standing(points, gutter, levels).ifPresent(notes::add);
  }

  private Outcome above(
      String point,
      String outlet,
      Gutter gutter,
      AdjustedLevels levels,
      LevelledPoints gutters,
      StageReadings stage) {
    double nominal =
        gutter.heightAboveOutletMetres(x(point)) - gutter.heightAboveOutletMetres(x(outlet));
    var readings = new ArrayList<>(gutters.readingsOf(point));
    readings.addAll(gutters.readingsOf(outlet));
    return outcomes.signed(
        "gutter-fall",
        point.substring("gutter.".length()),
        OptionalDouble.of(nominal),
        levels.difference(outlet, point),
        Math.abs(x(point) - x(outlet)),
        stage.evidence(readings));
  }

  /** A stretch that surely rises toward the outlet: water stands in it. */
  private Optional<Note> standing(List<String> points, Gutter gutter, AdjustedLevels levels) {
    for (int i = 1; i < points.size(); i++) {
      String low = points.get(i - 1);
      String high = points.get(i);
      boolean towardHigh = (x(low) + x(high)) / 2 < gutter.outletMetres();
      Estimate rise = towardHigh ? levels.difference(low, high) : levels.difference(high, low);
      if (rise.value() > rise.expanded()) {
        return Optional.of(
            new Note(
                Note.Kind.INFORMATION,
                "From "
                    + TargetWords.pointNamed(low)
                    + " to "
                    + TargetWords.pointNamed(high)
                    + " the gutter rises toward the outlet by "
                    + Millimetres.with(rise.value(), rise.expanded())
                    + ": water will stand there.",
                List.of()));
      }
    }
    return Optional.empty();
  }
}
