package datumpeg.analysis.check.enclosure;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Roof;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Difference of the two diagonals of a roof bay as observed: from the eave of the lower frame less
 * from the eave of the higher; + = the ridge stands toward end n. A mono roof's bays run from eave
 * A to eave B.
 *
 * <p>The rack that goes with it is near d·(d₁ − d₂)/(2a), a being the bay (law of cosines), and is
 * told beside it as planned sizes give it. Worked: diagonals of 7.500 and 7.488 m in a bay of 6 m
 * differ by 12 mm, a rack of 7.494 · 12/12 = 7.5 mm.
 */
public final class RoofSquare implements Check {
  private final SetOut setOut;
  private final OutcomeMaker outcomes;

  public RoofSquare(Job job, OutcomeMaker outcomes) {
    this.setOut = job.setOut();
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> used = stage.where(diagonals()::contains);
    Optional<DirectValues> direct = DirectValues.of(used, stage);
    List<Outcome> found = new ArrayList<>();
    direct.ifPresent(
        values -> {
          for (char side : sides()) {
            for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
              bay(side, number, values, stage).ifPresent(found::add);
            }
          }
        });
    return CheckResult.of(found, List.of(), used)
        .with(direct.map(DirectValues::tests).orElse(List.of()));
  }

  private boolean isGable() {
    return setOut.building().roof() == Roof.GABLE;
  }

  private List<Character> sides() {
    return isGable() ? List.of('A', 'B') : List.of('A');
  }

  private Set<Target> diagonals() {
    Set<Target> diagonals = new HashSet<>();
    for (char side : sides()) {
      for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
        diagonals.add(rising(side, number));
        diagonals.add(falling(side, number));
      }
    }
    return diagonals;
  }

  private Target rising(char side, int number) {
    return Target.distance(PointName.at("eave", new GridMark(side, number)), top(number + 1));
  }

  private Target falling(char side, int number) {
    return Target.distance(PointName.at("eave", new GridMark(side, number + 1)), top(number));
  }

  private PointName top(int number) {
    return isGable()
        ? new PointName("apex", Integer.toString(number), "")
        : PointName.at("eave", new GridMark('B', number));
  }

  private Optional<Outcome> bay(char side, int number, DirectValues values, StageReadings stage) {
    Target rising = rising(side, number);
    Target falling = falling(side, number);
    if (!values.values().contains(rising.text()) || !values.values().contains(falling.text())) {
      return Optional.empty();
    }
    Estimate difference =
        values
            .values()
            .quantity(rising.text())
            .minus(values.values().quantity(falling.text()))
            .estimate();
    double diagonal = setOut.nominalDistanceMetres(rising.first(), rising.second());
    double bay = setOut.portalFrameXMetres(number + 1) - setOut.portalFrameXMetres(number);
    Estimate rack = difference.scaled(diagonal / (2 * bay));
    String from = isGable() ? Character.toString(side) : "";
    return Optional.of(
        outcomes.signedWithAside(
            "roof-square",
            from + number + "-" + from + (number + 1),
            difference,
            diagonal,
            stage.evidence(values.readingsOf(List.of(rising.text(), falling.text()))),
            "a rack of "
                + Millimetres.signed(rack.value())
                + " ± "
                + Millimetres.of(rack.expanded())
                + ", + toward end n"));
  }
}
