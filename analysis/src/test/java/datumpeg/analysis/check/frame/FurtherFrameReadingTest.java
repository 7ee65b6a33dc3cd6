package datumpeg.analysis.check.frame;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static datumpeg.analysis.measuring.MeasuredQuantity.TILT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.AdjustedReading;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * One more reading of the frames, near the misfit of 0.1 % beyond which everything is decided as
 * observed. A reading that makes the misfit no rarer cannot turn adjusted into observed; adjusted
 * or observed, more readings know more; and adjusted knows more than observed. So it raises no
 * uncertainty of what rests on no suspected reading. A reading that does make it rarer may, but
 * never above what the outcome's own readings know.
 */
class FurtherFrameReadingTest {
  private static final double BENT = 0.001;

  private record Taken(MeasuredQuantity quantity, String target, double value) {}

  /** Feet, eaves and leans of four frames of side A, invented, with errors as large as asked. */
  private static List<Taken> row(long seed, double errors) {
    NormalDraws draws = new NormalDraws(seed);
    List<Taken> taken = new ArrayList<>();
    double[] bays = {5.968, 6.000, 5.968};
    for (int i = 1; i <= 3; i++) {
      for (String feature : List.of("base", "eave")) {
        taken.add(
            new Taken(
                DISTANCE,
                feature + ".A" + i + "-" + feature + ".A" + (i + 1),
                bays[i - 1] + draws.next(0.001 * errors)));
      }
    }
    for (int i = 1; i <= 4; i++) {
      taken.add(new Taken(TILT, "column.A" + i + "/along", draws.next(0.001 * errors) / 3.6));
    }
    return taken;
  }

  private static StageFindings reduced(List<Taken> row) {
    InventedJob job =
        new InventedJob()
            .meter("laser", DISTANCE, 0.001, 0.0005)
            .meter("spirit", TILT, 0.001 / 3.6, 0);
    row.forEach(one -> job.read("lift", one.quantity(), one.target(), one.value()));
    return job.reduced("lift");
  }

  private static Network frames(StageFindings found) {
    return found.networks().stream()
        .filter(network -> network.name().equals("the frames"))
        .findFirst()
        .orElseThrow();
  }

  private static Map<String, Double> uncertainties(StageFindings found) {
    Map<String, Double> byName = new TreeMap<>();
    for (Outcome outcome : found.outcomes()) {
      byName.put(outcome.check() + " " + outcome.target(), outcome.standardUncertainty());
    }
    return byName;
  }

  /** Outcomes that rest on a suspected reading: known no better than without it. */
  private static Set<String> resting(StageFindings found) {
    Set<String> suspected = new HashSet<>();
    found.notes().stream()
        .filter(note -> note.kind() == Note.Kind.SLIP_SUSPECTED)
        .forEach(note -> suspected.addAll(note.readingIds()));
    Set<String> names = new HashSet<>();
    for (Outcome outcome : found.outcomes()) {
      if (!Collections.disjoint(outcome.readingIds(), suspected)) {
        names.add(outcome.check() + " " + outcome.target());
      }
    }
    return names;
  }

  @Test
  void aReadingThatFitsRaisesNoUncertaintyAlsoNearTheMisfit() {
    int bent = 0;
    int straight = 0;
    int straightened = 0;
    int fitting = 0;
    for (long seed = 1; seed <= 30; seed++) {
      List<Taken> row = row(seed, 2.4);
      StageFindings before = reduced(row);
      double probability = frames(before).probability().orElseThrow();
      bent += probability < BENT ? 1 : 0;
      straight += probability >= BENT && probability < 0.05 ? 1 : 0;
      for (int i = 0; i < row.size(); i++) {
        StageFindings after = reduced(withAdjusted(row, i, before));
        double then = frames(after).probability().orElseThrow();
        if (then < probability) {
          continue;
        }
        fitting++;
        straightened += probability < BENT && then >= BENT ? 1 : 0;
        Map<String, Double> unsuspected = uncertainties(before);
        unsuspected.keySet().removeAll(resting(after));
        assertNoneRaised(unsuspected, uncertainties(after), seed + " " + i);
      }
    }
    assertTrue(bent >= 5 && straight >= 5, bent + " bent, " + straight + " nearly");
    assertTrue(straightened >= 1, "some become straight");
    assertTrue(fitting >= 250, "of 300 readings at their adjusted values " + fitting + " fit");
  }

  private static List<Taken> withAdjusted(List<Taken> row, int i, StageFindings found) {
    List<AdjustedReading> adjusted = frames(found).readings();
    Taken like = row.get(i);
    AdjustedReading one =
        adjusted.stream()
            .filter(reading -> reading.target().equals(like.target()))
            .findFirst()
            .orElseThrow();
    double value =
        like.quantity() == TILT
            ? StrictMath.atan(one.adjustedMetres() / 3.6)
            : like.value() + one.adjustedMetres() - one.observedMetres();
    List<Taken> more = new ArrayList<>(row);
    more.add(new Taken(like.quantity(), like.target(), value));
    return more;
  }

  private static void assertNoneRaised(
      Map<String, Double> before, Map<String, Double> after, String what) {
    before.forEach(
        (name, u) ->
            assertTrue(
                after.getOrDefault(name, Double.POSITIVE_INFINITY) <= u * (1 + 1e-6),
                () -> what + ": " + name + " " + u + " " + after.get(name)));
  }

  /** 12 mm off: the frames no longer fit, and a lean is known as its own reading knows it. */
  @Test
  void aReadingThatDoesNotFitRaisesNoneAboveItsOwnReadings() {
    for (long seed = 1; seed <= 10; seed++) {
      List<Taken> row = new ArrayList<>(row(seed, 1));
      StageFindings before = reduced(row);
      row.add(new Taken(DISTANCE, "base.A1-base.A2", 5.968 + 0.012));
      StageFindings after = reduced(row);
      assertTrue(frames(after).probability().orElseThrow() < BENT);
      double adjusted =
          before.outcome("column-plumb", "A4/along").orElseThrow().standardUncertainty();
      double observed =
          after.outcome("column-plumb", "A4/along").orElseThrow().standardUncertainty();
      assertEquals(0.001, observed, 1e-6);
      assertTrue(adjusted < 0.0009, "" + adjusted);
    }
  }
}
