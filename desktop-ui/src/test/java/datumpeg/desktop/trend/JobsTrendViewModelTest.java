package datumpeg.desktop.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.chart.Mark;
import datumpeg.desktop.control.Choice;
import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class JobsTrendViewModelTest {
  private final Words words = Words.of(Locale.ROOT);
  private final JobsTrendViewModel model =
      new JobsTrendViewModel(words, Runnable::run, Runnable::run);

  JobsTrendViewModelTest() {
    model.want(true);
  }

  private JobsTrendPage page() {
    return model.page().get();
  }

  @Test
  void pointsOfAllJobsComeInTheOrderOfTime() {
    model.show(InventedCrews.state(24));
    assertEquals(48, page().points().size());
    assertEquals("column-plumb", page().chosen().get(TrendMatter.CHECK));
    assertEquals("2026-03-02", page().labels().place().apply(0));
    assertTrue(
        page().labels().told().apply(0).startsWith("Point 1: job-0 A2/a"),
        page().labels().told().apply(0));
    assertEquals(8, page().points().permittedUpper(0), 1e-9);
  }

  @Test
  void filtersOfferWhatOccurs() {
    model.show(InventedCrews.state(6));
    assertEquals(
        List.of("all", "Amber", "Blue"),
        page().choices().getOrDefault(TrendMatter.CREW, List.of()).stream()
            .map(Choice::name)
            .toList());
    assertEquals(
        List.of("", "/across", "/along"),
        page().choices().getOrDefault(TrendMatter.TARGET, List.of()).stream()
            .map(Choice::id)
            .toList());
    model.choose(TrendMatter.CREW, "Blue");
    model.choose(TrendMatter.TARGET, "/along");
    assertEquals(3, page().points().size());
    model.between(Optional.of(LocalDate.of(2026, 3, 4)), Optional.of(LocalDate.of(2026, 3, 5)));
    assertEquals(1, page().points().size());
    assertTrue(page().sentences().get(0).startsWith("One point gives no control limits"));
  }

  @Test
  void jobThatFallsOutIsMarkedAndSaid() {
    model.show(InventedCrews.withAnOddJob(24));
    model.choose(TrendMatter.PER, "JOB");
    assertEquals(24, page().points().size());
    assertEquals(Mark.BEYOND, page().points().mark(17));
    assertTrue(
        page().signals().contains("Point 18: above the control limit."),
        page().signals().toString());
    assertTrue(page().labels().told().apply(17).contains("Above the control limit."));
    assertTrue(Double.isNaN(page().points().permittedUpper(0)), "a mean has none");
  }

  @Test
  void scaleChartAndRulesFollowTheChoice() {
    model.show(InventedCrews.state(24));
    model.choose(TrendMatter.SCALE, "OF_PERMITTED");
    assertEquals("%", page().labels().unit());
    assertEquals(100, page().points().permittedUpper(0), 1e-9);
    model.choose(TrendMatter.CHART, "EWMA");
    assertEquals(0, page().points().bar(0));
    double first = page().points().controlUpper(0) - page().points().centre();
    double last = page().points().controlUpper(47) - page().points().centre();
    assertEquals(0.2 / Math.sqrt(0.2 / 1.8), first / last, 1e-4);
    model.choose(TrendMatter.RULES, "NELSON");
    model.choose(TrendMatter.CHART, "INDIVIDUALS");
    assertTrue(page().spoken().contains("L. S. Nelson"), page().spoken());
  }

  @Test
  void feetAndInchesAreTheUsersUnits() {
    model.show(InventedCrews.state(6));
    double metric = page().points().value(0);
    words.units(LengthDisplay.IMPERIAL);
    model.show(InventedCrews.state(6));
    assertEquals(metric / 25.4, page().points().value(0), 1e-9);
    assertEquals("in", page().labels().unit());
  }

  @Test
  void tableHasAHeadAndARowAPoint() {
    model.show(InventedCrews.state(6));
    assertEquals(13, page().csv().text().lines().count());
  }

  @Test
  void emptyChartSaysWhy() {
    assertTrue(page().sentences().get(0).startsWith("No job of the record is worked out yet"));
    model.show(InventedCrews.state(6));
    model.choose(TrendMatter.METER, "nobody's");
    assertTrue(page().sentences().get(0).startsWith("There is no point to show"));
    assertEquals(0, page().points().size());
    model.show(
        InventedJobs.state(List.of(InventedJobs.cannot(InventedJobs.row("1"), "No job file."))));
    assertTrue(page().spoken().contains("The job fernhollow-03 is left out: No job file."));
  }

  @Test
  void noneIsMadeWhileTheTrendOfOneJobIsShown() {
    List<Boolean> told = new ArrayList<>();
    model.onWanted(() -> told.add(model.isWanted()));
    model.want(false);
    model.show(InventedCrews.state(24));
    assertEquals(0, page().points().size());
    model.want(true);
    assertEquals(48, page().points().size());
    assertEquals(List.of(false, true), told);
  }
}
