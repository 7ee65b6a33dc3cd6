package datumpeg.analysis.tell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.remedy.Movability;
import datumpeg.analysis.report.InventedOutcomes;
import datumpeg.analysis.report.InventedShed;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TellingsTest {
  /** Targets of checks that are not told of a place such as A2. */
  private static final Map<String, String> TARGETS =
      Map.ofEntries(
          Map.entry("column-plumb", "A2/across"),
          Map.entry("portal-plumb", "2/across"),
          Map.entry("mullion-plumb", "1.M1/across"),
          Map.entry("frame-spacing", "A1-A2/base"),
          Map.entry("spacing-match", "A1-A2"),
          Map.entry("slab-flatness", "straightedge"),
          Map.entry("line-straight", "line.A2"),
          Map.entry("opening", "D1/width"),
          Map.entry("clear-span", "2/base"),
          Map.entry("sheet-run", "A/10/eave"),
          Map.entry("straightness", "base.A/chord"));

  private static Outcome out(String check, String target, double deviationMetres) {
    return InventedOutcomes.outcome(
        check,
        target,
        OptionalDouble.of(0),
        deviationMetres,
        deviationMetres,
        0.002,
        Optional.of(new Limits(OptionalDouble.of(-0.005), OptionalDouble.of(0.005), "invented")),
        0.001,
        Verdict.NONCONFORMING,
        "",
        List.of());
  }

  private static Situation at(String stage) {
    Job job = InventedShed.job();
    return new Situation(job.setOut(), job.props(), Movability.at(stage, Stage.STANDARD));
  }

  @Test
  void everyCheckHasItsWords() {
    assertEquals(Set.copyOf(CheckNames.ALL), Tellings.checks());
  }

  @Test
  void everyCheckSaysWhatIsWrongAndWhatToDoEitherWayAtEveryStage() {
    for (String check : CheckNames.ALL) {
      String target = TARGETS.getOrDefault(check, "A2");
      for (double deviation : new double[] {0.012, -0.012}) {
        Outcome outcome = out(check, target, deviation);
        String sentence = Tellings.sentence(outcome, List.of(outcome));
        assertTrue(sentence.endsWith("."), sentence);
        assertFalse(check.contains("-") && sentence.startsWith(check), sentence);
        for (Stage stage : Stage.STANDARD) {
          String remedy = Tellings.remedy(outcome, at(stage.id()));
          assertTrue(remedy.endsWith("."), check + ": " + remedy);
          assertFalse(remedy.equals("Ask the engineer."), check);
        }
        assertFalse(Tellings.cause(outcome, List.of(outcome)).isBlank());
      }
      assertFalse(Tellings.title(check).equals(check.replace('-', ' ')), check);
    }
  }

  @Test
  void whatTheMeterCannotSeeIsLeftButConcreteAndPackingAreToldAnyway() {
    assertTrue(
        Tellings.remedy(out("clear-span", "2/base", 0.0015), at("lift")).startsWith("Leave it"));
    assertFalse(
        Tellings.remedy(out("slab-square", "A1", 0.0015), at("arrival")).startsWith("Leave it"));
  }

  @Test
  void aCheckThatNobodyListsGoesToTheEngineerByItsName() {
    Outcome outcome = out("edge-sound", "A2", 0.012);
    assertEquals("edge sound", Tellings.title("edge-sound"));
    assertTrue(Tellings.sentence(outcome, List.of()).startsWith("edge-sound A2 is off by"));
    assertEquals("Ask the engineer.", Tellings.remedy(outcome, at("lift")));
  }
}
