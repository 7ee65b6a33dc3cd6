package datumpeg.analysis.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Decision;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.remedy.LinePlacement;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

final class ReportTest {
  private final Report report =
      new Report(InventedShed.job(), InventedFindings.findings(), InventedShed.readings());

  private static String page(StageFindings... stages) {
    return new Report(InventedShed.job(), new Findings("larkrise-01", "digest", List.of(stages)))
        .html(InventedFindings.all());
  }

  private static String words(String page) {
    return PageReading.words(PageReading.parsed(page));
  }

  private static int count(String text, String part) {
    return (text.length() - text.replace(part, "").length()) / part.length();
  }

  @Test
  void everyPageIsWellFormedAndItsDrawingsAreSvg() {
    for (ReportOptions options :
        List.of(
            InventedFindings.all(),
            InventedFindings.stage("arrival"),
            InventedFindings.stage("lift"),
            InventedFindings.stage("roofing"))) {
      Document page = PageReading.parsed(report.html(options));
      for (Element svg : PageReading.elements(page, "svg")) {
        assertEquals("http://www.w3.org/2000/svg", svg.getAttribute("xmlns"));
        assertEquals(4, svg.getAttribute("viewBox").split(" ").length);
        assertTrue(svg.getAttribute("width").endsWith("mm"));
      }
    }
  }

  @Test
  void thePageNeedsNothingFromOutsideAndRunsNothing() {
    Document page = PageReading.parsed(report.html(InventedFindings.all()));
    for (String element : List.of("script", "link", "img", "iframe", "object", "use", "image")) {
      assertTrue(PageReading.elements(page, element).isEmpty(), element);
    }
    String css = PageReading.elements(page, "style").get(0).getTextContent();
    assertFalse(css.contains("url("));
    assertFalse(css.contains("@import"));
    assertTrue(css.contains("size: A4"));
  }

  @Test
  void theAnswerComesBeforeEverythingButTheHeader() {
    String text = words(report.html(InventedFindings.stage("arrival")));
    int answer = text.indexOf("Do not set out from this slab's edges");
    int first = text.indexOf("First: Set the column lines out square");
    assertTrue(answer > 0 && answer < first);
    assertTrue(first < text.indexOf(InventedFindings.RACKED));
    assertTrue(text.indexOf(InventedFindings.RACKED) < text.indexOf("The slab in plan"));
    assertTrue(text.indexOf("The slab in plan") < text.indexOf("Outcomes"));
    assertTrue(text.indexOf("Outcomes") < text.indexOf("Not measured"));
    assertTrue(text.indexOf("Not measured") < text.indexOf("What the numbers mean"));
    assertTrue(text.indexOf("What the numbers mean") < text.indexOf("Signed"));
    assertTrue(text.indexOf("Signed") < text.indexOf("Heads to keep"));
  }

  @Test
  void theMostPressingAnswerOfTheLatestStageIsTheLargeOne() {
    StageFindings arrival = InventedFindings.arrival();
    StageFindings lift = InventedFindings.lift();
    StageFindings tightening = InventedFindings.tightening();
    assertEquals(lift, AnswerSection.mostPressing(List.of(arrival, lift, tightening)));
    assertEquals(arrival, AnswerSection.mostPressing(List.of(arrival, tightening)));
    assertTrue(
        words(report.html(InventedFindings.all()))
            .contains("arrival: slab check: Do not set out from this slab's edges"));
  }

  @Test
  void eachCauseIsToldOnceWithItsSymptomsUnderIt() {
    String text = words(report.html(InventedFindings.all()));
    for (StageFindings stage : InventedFindings.findings().stages()) {
      for (Cause cause : stage.causes()) {
        assertEquals(1, count(text, cause.sentence()), cause.sentence());
      }
    }
    assertTrue(
        text.contains("It shows in: Slab squareness, corner A1 +11.9 ± 2.1 mm; Slab squareness"));
    assertEquals(5, count(words(report.html(InventedFindings.stage("arrival"))), "See cause 1"));
  }

  @Test
  void theRemedyOfAnOutcomeUnderACauseIsNotToldAgain() {
    Outcome leaning =
        InventedFindings.lift().outcomes().stream()
            .filter(outcome -> outcome.target().equals("A3/across"))
            .findFirst()
            .orElseThrow()
            .withRemedy("Straighten it.");
    StageFindings stage =
        stage(List.of(leaning), InventedFindings.lift().causes(), Answer.Kind.STOP);
    assertFalse(words(page(stage)).contains("Straighten it."));
    StageFindings without = stage(List.of(leaning), List.of(), Answer.Kind.STOP);
    assertTrue(words(page(without)).contains("Do: Straighten it."));
  }

  private static StageFindings stage(List<Outcome> outcomes, List<Cause> causes, Answer.Kind kind) {
    return new StageFindings(
        "lift",
        1,
        outcomes,
        Map.of(),
        Map.of(),
        causes,
        List.of(),
        new Answer(kind, "An answer.", ""));
  }

  @Test
  void eachOutcomeStandsWithItsUncertaintyLimitsSourceProbabilityAndReadings() {
    String page = report.html(InventedFindings.stage("lift"));
    List<Element> bodies = PageReading.elements(PageReading.parsed(page), "tbody");
    int outcomes = InventedFindings.lift().outcomes().size();
    for (Element body : bodies.subList(0, outcomes)) {
      String text = body.getTextContent();
      assertTrue(text.matches("(?s).*[+−]?\\d+\\.\\d ± \\d+\\.\\d\\s.*k = 2\\.0\\..*"), text);
      assertTrue(text.matches("(?s).*Limits: (project specification|job file).*"), text);
      assertTrue(text.matches("(?s).*Readings: R\\d+.*"), text);
      assertTrue(text.matches("(?s).*\\d %.*"), text);
      assertTrue(text.contains("conforming") || text.contains("undecided"), text);
    }
    assertTrue(words(page).contains("verify against your copy"));
  }

  @Test
  void wordsFromOutsideCannotBreakThePage() {
    String nasty = "<b>&\"']]>\u0000\u0007\u202E</title></style>" + "x".repeat(300) + "\uD800";
    Job job = InventedShed.job(nasty, 3);
    String page = new Report(job, InventedFindings.findings()).html(InventedFindings.all());
    Document parsed = PageReading.parsed(page);
    String heading = PageReading.elements(parsed, "h1").get(0).getTextContent();
    assertTrue(heading.startsWith("<b>&\"']]>\uFFFD\uFFFD\uFFFD</title></style>xxx"), heading);
    assertTrue(heading.endsWith("x\uFFFD"));
  }

  @Test
  void equalInputsGiveEqualBytes() {
    Report again =
        new Report(InventedShed.job(), InventedFindings.findings(), InventedShed.readings());
    assertEquals(report.html(InventedFindings.all()), again.html(InventedFindings.all()));
  }

  @Test
  void aJobWithoutReadingsSaysSoInsteadOfAnAnswer() {
    String text = words(page());
    assertTrue(text.contains("Nothing was measured in this job yet."));
    assertFalse(text.contains("Outcomes"));
  }

  @Test
  void aStageWithoutReadingsSaysSo() {
    assertTrue(
        words(report.html(InventedFindings.stage("roofing")))
            .contains("Nothing was measured at this stage yet (roofing)."));
  }

  @Test
  void valuesWithoutLimitsStandWithoutVerdicts() {
    String text = words(page(InventedFindings.tightening()));
    assertTrue(text.contains("The job gives no limits for what was measured here"));
    assertTrue(text.contains("no limit given"));
    assertTrue(text.contains("8574.5"));
  }

  @Test
  void theLinesToSnapStandInATable() {
    StageFindings full = InventedFindings.arrival();
    LinePlacement lines =
        new LinePlacement(
            List.of(new LinePlacement.Offset("A1", "A1-A4", 0.214, 0.2167, 0.0007)),
            -0.0027,
            0.0007,
            "A1",
            OptionalDouble.of(0.010),
            Optional.of(new Decision.Decided(1, Verdict.CONFORMING)));
    StageFindings placed =
        new StageFindings(
            "arrival",
            1,
            full.outcomes(),
            full.points(),
            full.levels(),
            full.causes(),
            full.notes(),
            full.networks(),
            full.answer(),
            Optional.of(lines),
            Set.of());
    String text = words(page(placed));
    assertTrue(
        text.contains("The lines fit on the slab with at least 2.7 ± 1.4 mm to spare"), text);
    assertTrue(text.contains("A1 A1-A4 214.0 216.7 1.4"), text);
    assertFalse(words(page(full)).contains("Where to snap the lines"));
    assertFalse(text.contains("Snap none yet"), text);
    List<Note> doubts =
        List.of(
            new Note(Note.Kind.SLIP_SUSPECTED, "Two readings contradict each other.", List.of()));
    StageFindings doubted =
        new StageFindings(
            "arrival",
            1,
            full.outcomes(),
            full.points(),
            full.levels(),
            full.causes(),
            doubts,
            full.networks(),
            full.answer(),
            Optional.of(lines),
            Set.of());
    assertTrue(
        words(page(doubted))
            .contains(
                "Where to snap the lines Snap none yet: readings of this stage contradict each"
                    + " other."),
        words(page(doubted)));
  }

  @Test
  void aSlabThatIsNotFixedGetsASentenceInsteadOfAnEmptyPlan() {
    StageFindings full = InventedFindings.arrival();
    StageFindings without =
        new StageFindings(
            "arrival",
            1,
            full.outcomes().subList(0, 1),
            Map.of(),
            Map.of(),
            List.of(),
            List.of(),
            full.answer());
    String text = words(page(without));
    assertTrue(text.contains("No plan is drawn"));
    assertFalse(text.contains("Thin line: as designed"));
    assertFalse(words(page(InventedFindings.lift())).contains("No plan is drawn"));
  }

  @Test
  void theSlabPageIsAddressedToWhoLaidItAndCarriesNoCautionsOfTheLift() {
    String slab = words(report.html(InventedFindings.stage("arrival")));
    assertTrue(slab.contains("For Stonecroft."));
    assertTrue(slab.contains("Received, slab Stonecroft"));
    assertTrue(slab.contains("one reading ± 1.6 mm (k = 2)"));
    assertTrue(slab.contains("The level of seat.B1 was not taken"));
    assertFalse(slab.contains("Wind:"));
    assertFalse(slab.contains("Column plumb"));
    assertTrue(words(report.html(InventedFindings.stage("lift"))).contains("Wind:"));
  }

  @Test
  void aStaleOutcomeIsMarked() {
    Outcome fresh = InventedFindings.lift().outcomes().get(0);
    Outcome stale =
        new Outcome(
            fresh.check(),
            fresh.target(),
            2,
            fresh.unit(),
            fresh.nominal(),
            fresh.measured(),
            fresh.deviation(),
            fresh.expandedUncertainty(),
            fresh.coverage(),
            fresh.limits(),
            fresh.probability(),
            fresh.verdict(),
            true,
            "",
            "zero error 0.02°",
            fresh.readingIds());
    String text = words(page(stage(List.of(stale), List.of(), Answer.Kind.MEASURE_AGAIN)));
    assertTrue(text.contains("STALE: something this stands on was moved since."));
    assertTrue(text.contains("Round 2. Zero error 0.02°."));
  }

  @Test
  void feetAndInchesReplaceMillimetresEverywhere() {
    ReportOptions imperial =
        new ReportOptions(
            Optional.of("arrival"), LengthDisplay.IMPERIAL, List.of(), "0.1.0", "today");
    // 18.0021 m = 708.744 in = 59 ft 0.744 in, shown to the sixteenth; 2.1 mm = 0.083 in.
    String text = words(report.html(imperial));
    assertTrue(text.contains("59' 0 3/4\""));
    assertTrue(text.contains("+0.08 ± 0.09"));
    assertTrue(text.contains("Deviations, uncertainties and limits in inches."));
  }

  @Test
  void headsAndJobFileAreThereToKeep() {
    String text = words(report.html(InventedFindings.all()));
    assertTrue(text.contains("9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"));
    assertTrue(text.contains("job file 3b1f0c77a0d1e2f3"));
    assertTrue(text.contains("Datumpeg 0.1.0, printed 2026-03-03 17:40 UTC"));
  }

  @Test
  void probabilitiesAreNeverRoundedToCertainty() {
    assertEquals("< 0.1 %", OutcomeTable.percent(0));
    assertEquals("0.1 %", OutcomeTable.percent(0.001154));
    assertEquals("90.9 %", OutcomeTable.percent(0.908789));
    assertEquals("> 99.9 %", OutcomeTable.percent(1));
  }
}
