package datumpeg.desktop.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TrendViewModelTest {
  private final TrendViewModel model = new TrendViewModel(Words.of(Locale.ROOT));

  private TrendPage page() {
    return model.page().get();
  }

  private void showReduced() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    model.choose(InventedJobs.ID);
  }

  @Test
  void mostTellingSeriesIsShownFirst() {
    showReduced();
    assertEquals("column-plumb", page().check());
    assertEquals("A3/across", page().target());
  }

  @Test
  void pointsRunThroughStagesAndRounds() {
    showReduced();
    assertEquals(
        List.of("Lift, round 1", "Lift, round 2", "Tightening, round 2"),
        page().points().stream().map(TrendPoint::label).toList());
    TrendPoint first = page().points().get(0);
    assertEquals(13.4, first.deviation(), 1e-9);
    assertEquals(2.3, first.uncertainty(), 1e-9);
    assertEquals(OptionalDouble.of(7.2), first.upper());
    assertEquals(Standing.NONCONFORMING, first.standing());
    assertEquals("mm", page().unit());
  }

  /** √(2.3² + 2.3²) = 3.25 mm: a change of −11.8 mm is more, one of +0.8 mm is not. */
  @Test
  void changesAreHeldAgainstTheirUncertainty() {
    showReduced();
    assertEquals(
        List.of(
            "Lift, round 1 to Lift, round 2: changed by −11.8 mm, more than the uncertainty of the"
                + " change, 3.3 mm.",
            "Lift, round 2 to Tightening, round 2: changed by +0.8 mm, within the uncertainty of"
                + " the change, 3.3 mm."),
        page().changes());
  }

  @Test
  void anyCheckAndTargetWithOutcomesCanBeChosen() {
    showReduced();
    model.chooseCheck("slab-size");
    assertEquals(List.of("A1-A4", "B1-B4"), page().targets());
    model.chooseTarget("B1-B4");
    assertEquals("B1-B4", page().target());
    assertEquals(1, page().points().size());
    assertTrue(page().changes().get(0).startsWith("Measured once so far"));
  }

  @Test
  void valueWithoutLimitsSaysThatNoneAreDrawn() {
    showReduced();
    model.chooseCheck("clear-span");
    assertEquals(OptionalDouble.empty(), page().points().get(0).upper());
    assertTrue(
        page().sentence().endsWith("The job gives no limits for it, so none are drawn."),
        page().sentence());
  }

  @Test
  void choiceStaysWhenReadingsComeIn() {
    showReduced();
    model.chooseCheck("slab-square");
    String target = page().target();
    model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("slab-square", page().check());
    assertEquals(target, page().target());
  }

  @Test
  void everyEmptyTrendSaysWhy() {
    assertTrue(page().sentence().startsWith("No job is chosen"));
    model.choose("nowhere-1");
    assertTrue(page().sentence().startsWith("The record holds no job nowhere-1."));
    model.show(InventedJobs.state(InventedJobs.unmeasured()));
    model.choose(InventedJobs.ID);
    assertTrue(page().sentence().startsWith("Nothing was found in this job yet"));
    model.show(
        InventedJobs.state(List.of(InventedJobs.cannot(InventedJobs.row("1"), "No job file."))));
    assertEquals("No job file.", page().sentence());
  }

  @Test
  void drawingIsToldInWords() {
    showReduced();
    assertTrue(
        page().spoken().contains("Lift, round 1: +13.4 ± 2.3 mm, nonconforming."), page().spoken());
  }

  @Test
  void whatWasChosenIsChosenAgainAtTheNextStart() {
    Map<String, String> kept = new HashMap<>(Map.of("job", InventedJobs.ID));
    model.onChosen(kept::putAll);
    showReduced();
    String other =
        page().targets().stream()
            .filter(target -> !target.equals(page().target()))
            .findFirst()
            .orElseThrow();
    model.chooseTarget(other);
    TrendViewModel later = new TrendViewModel(Words.of(Locale.ROOT));
    later.restore(kept);
    later.show(InventedJobs.state(InventedJobs.reduced()));
    later.choose(InventedJobs.ID);
    assertEquals(other, later.page().get().target());
    model.choose("another-job");
    assertEquals("", kept.get("trend.of-job.target"));
  }
}
