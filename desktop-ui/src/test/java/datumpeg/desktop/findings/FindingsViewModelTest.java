package datumpeg.desktop.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.app.NoRows;
import datumpeg.desktop.findings.FindingsPage.ShownStage;
import datumpeg.desktop.findings.FindingsPage.StageChoice;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class FindingsViewModelTest {
  private final FindingsViewModel model =
      new FindingsViewModel(Words.of(Locale.ROOT), new NoRows(), (job, stage) -> {});

  private FindingsPage page() {
    return model.page().get();
  }

  private ShownStage arrival() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    model.choose(InventedJobs.ID, "arrival");
    return page().shown().orElseThrow();
  }

  @Test
  void latestMeasuredStageIsShownFirst() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    model.choose(InventedJobs.ID, "");
    assertEquals("tightening", page().shown().orElseThrow().stage());
    assertEquals(
        List.of("tightening"),
        page().stages().stream().filter(StageChoice::chosen).map(StageChoice::stage).toList());
  }

  @Test
  void choiceOfAStageTellsHowItsGravestOutcomeStands() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    model.choose(InventedJobs.ID, "");
    assertEquals(Standing.NONCONFORMING, page().stages().get(0).gravest());
    assertEquals(Standing.NOT_MEASURED, page().stages().get(1).gravest());
    assertEquals(Standing.CONFORMING, page().stages().get(5).gravest());
  }

  @Test
  void answerComesWithWhatToDoFirst() {
    assertEquals(Standing.NONCONFORMING, arrival().standing());
    assertEquals(
        "Do not set out from the slab edges: the slab is 12 mm out of square.", arrival().answer());
    assertEquals("Set the column lines square inside the slab.", arrival().first());
  }

  @Test
  void causeIsToldOnceWithItsSymptomsByName() {
    assertEquals(2, arrival().causes().size());
    assertEquals(
        "Shows in: Slab squareness A1, Slab squareness B1", arrival().causes().get(0).symptoms());
    assertEquals("", arrival().causesSentence());
    assertEquals(
        java.util.stream.IntStream.rangeClosed(1, arrival().causes().size()).boxed().toList(),
        arrival().causes().stream().map(FindingsPage.CauseCard::number).toList(),
        "as on the drawing");
  }

  @Test
  void outcomesAreWrittenTheGravestFirst() {
    List<OutcomeRow> rows = arrival().outcomes();
    assertEquals(
        List.of(
            Standing.NONCONFORMING,
            Standing.NONCONFORMING,
            Standing.UNDECIDED,
            Standing.CONFORMING,
            Standing.CONFORMING,
            Standing.CONFORMING),
        rows.stream().map(OutcomeRow::standing).toList());
    OutcomeRow first = rows.get(0);
    assertEquals("Slab squareness", first.check());
    assertEquals("A1", first.target());
    assertEquals("+12.4 ± 2.3 mm", first.deviation());
    assertEquals("±8 mm", first.limits());
    assertEquals("< 0.1 %", first.probability());
    assertEquals("nonconforming", first.verdict());
    assertEquals(
        "Slab squareness A1: deviation +12.4 mm, uncertainty ±2.3 mm, nonconforming.",
        first.spoken());
  }

  @Test
  void suspectedSlipIsTheFirstNote() {
    assertTrue(arrival().notes().get(0).startsWith("slab.A1-slab.B1 reads"), arrival().toString());
  }

  @Test
  void stageWithoutAFaultSaysSo() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    model.choose(InventedJobs.ID, "tightening");
    assertEquals(
        "Nothing is out of its limits and nothing is too close to call.",
        page().shown().orElseThrow().causesSentence());
  }

  @Test
  void everyEmptyPageSaysWhy() {
    assertEquals("No job is chosen. Choose one on the screen Jobs.", page().sentence());
    model.choose("nowhere-1", "");
    assertTrue(page().sentence().startsWith("The record holds no job nowhere-1."));
    model.show(InventedJobs.state(InventedJobs.unmeasured()));
    model.choose(InventedJobs.ID, "");
    assertTrue(page().sentence().startsWith("Nothing was measured in this job yet."));
    model.chooseStage("lift");
    assertTrue(page().sentence().startsWith("Nothing was measured at this stage yet: Lift."));
    model.show(
        InventedJobs.state(List.of(InventedJobs.cannot(InventedJobs.row("1"), "No job file."))));
    assertEquals("No job file.", page().sentence());
  }

  @Test
  void stageStaysChosenWhenReadingsComeIn() {
    model.show(InventedJobs.state(InventedJobs.unmeasured()));
    model.choose(InventedJobs.ID, "lift");
    model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("lift", page().shown().orElseThrow().stage());
  }
}
