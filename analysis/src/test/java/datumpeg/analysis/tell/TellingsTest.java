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
          Map.entry("opening", "D1/foot"),
          Map.entry("mullion-spacing", "1/A-M1"),
          Map.entry("gutter-fall", "A@(3.5)"),
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
  void eachPartOfAnOpeningHasItsWords() {
    assertEquals(
        "opening D1 is 12.0 ± 2.0 mm too wide at its foot.", told("opening", "D1/foot", 0.012));
    assertEquals(
        "opening D1 is 12.0 ± 2.0 mm too low on the right, seen from outside.",
        told("opening", "D1/right", -0.012));
    assertEquals(
        "opening D1 is out of square by 12.0 ± 2.0 mm, its head pushed to the left seen from outside.",
        told("opening", "D1/diagonals", -0.012));
    assertEquals(
        "the left post of opening D1 leans 12.0 ± 2.0 mm toward end n.",
        told("opening", "D1/left/along", 0.012));
    assertEquals(
        "Bring the top of the post 12.0 ± 2.0 mm back toward end 1.",
        Tellings.remedy(out("opening", "D1/left/along", 0.012), at("lift")));
    assertEquals(
        "Set its posts 12.0 ± 2.0 mm closer together at the head before they are fixed.",
        Tellings.remedy(out("opening", "D1/head", 0.012), at("lift")));
    assertEquals(
        "Set its head 12.0 ± 2.0 mm higher on the left before it is fixed.",
        Tellings.remedy(out("opening", "D1/left", -0.012), at("lift")));
  }

  private static String told(String check, String target, double deviationMetres) {
    Outcome outcome = out(check, target, deviationMetres);
    return Tellings.sentence(outcome, List.of(outcome));
  }

  @Test
  void whatIsWrongIsSaidInWords() {
    assertEquals(
        "the clear span of frame 2 at the base is 12.0 ± 2.0 mm too wide.",
        told("clear-span", "2/base", 0.012));
    assertEquals(
        "slab corner A1 lies 12.0 ± 2.0 mm below the slab's mean level.",
        told("slab-level-point", "slab.A1", -0.012));
    assertEquals(
        "the anchors of base A2 are 12.0 ± 2.0 mm nearer to their line mark than planned.",
        told("anchor-edge", "A2/mark", -0.012));
    assertEquals(
        "the outermost anchor of base A1 is nearer to the slab's end edge by 12.0 ± 2.0 mm than the"
            + " project allows.",
        told("anchor-edge", "A1/end", -0.012));
    assertEquals(
        "mullion 1.M1 leans 12.0 ± 2.0 mm toward side B.",
        told("mullion-plumb", "1.M1/across", 0.012));
    assertEquals(
        "the posts A to M1 at frame 1 are 12.0 ± 2.0 mm too far apart.",
        told("mullion-spacing", "1/A-M1", 0.012));
    assertEquals(
        "the sheets run skew: after 10 sheets on side A the ridge is 12.0 ± 2.0 mm ahead.",
        told("sheet-run", "A/10/skew", 0.012));
    assertEquals(
        "column plumb, A2, across", Tellings.name(out("column-plumb", "A2/across", 0.012)));
  }

  /** The lines are known to diverge toward end n: that is where the marks move. */
  @Test
  void linesThatSpreadAreBroughtTogetherAtEndN() {
    assertEquals(
        "Bring the line marks at end n 12.0 ± 2.0 mm closer together, then read both ends and the"
            + " diagonals again.",
        Tellings.remedy(out("line-parallel", "A-B", 0.012), at("set-out")));
  }

  @Test
  void aCheckThatNobodyListsGoesToTheEngineerByItsName() {
    Outcome outcome = out("edge-sound", "A2", 0.012);
    assertEquals("edge sound", Tellings.title("edge-sound"));
    assertTrue(Tellings.sentence(outcome, List.of()).startsWith("edge-sound A2 is off by"));
    assertEquals("Ask the engineer.", Tellings.remedy(outcome, at("lift")));
  }
}
