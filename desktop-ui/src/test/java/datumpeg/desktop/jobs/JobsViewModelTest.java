package datumpeg.desktop.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.desktop.source.InventedCrews;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.source.JobRow;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class JobsViewModelTest {
  private final List<String> opened = new ArrayList<>();
  private final JobsViewModel model =
      new JobsViewModel(
          Words.of(Locale.ROOT),
          ZoneOffset.ofHours(1),
          (job, stage) -> opened.add(job + "/" + stage));

  private JobCard onlyCard() {
    assertEquals(1, model.page().get().cards().size());
    return model.page().get().cards().get(0);
  }

  @Test
  void cardTellsWhoseJobItIsAndWhenItWasReadLast() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("Tool store, Fernhollow", onlyCard().title());
    assertEquals(
        "fernhollow-03  ·  Site Fernhollow  ·  Crew Blue  ·  37 readings  ·  Last entry 2026-03-04"
            + " 11:15",
        onlyCard().particulars());
    assertEquals("One job in the record", model.page().get().heading());
  }

  @Test
  void stripCountsOutcomesByStageTheGravestFirst() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    StageTile arrival = onlyCard().stages().get(0);
    assertEquals("Arrival", arrival.title());
    assertEquals(
        List.of(
            new StageTile.Count(Standing.NONCONFORMING, 2),
            new StageTile.Count(Standing.UNDECIDED, 1),
            new StageTile.Count(Standing.NOT_MEASURED, 1),
            new StageTile.Count(Standing.CONFORMING, 3)),
        arrival.counts());
    assertEquals(8, onlyCard().stages().size(), "stages without readings are in the strip too");
    assertEquals(List.of(), onlyCard().stages().get(1).counts());
  }

  @Test
  void jobWithoutAJobFileNameIsCalledByItsId() {
    model.show(
        InventedJobs.state(
            List.of(
                InventedJobs.cannot(
                    new datumpeg.desktop.source.JobRow("old-2", "", Optional.empty(), 1, ""),
                    "Its job file has an unknown key."))));
    assertEquals("old-2", onlyCard().title());
    assertEquals("old-2  ·  1 reading", onlyCard().particulars());
    assertEquals("Its job file has an unknown key.", onlyCard().sentence());
  }

  @Test
  void everyKindOfEmptyListSaysWhy() {
    assertEquals("The record is being read.", model.page().get().sentence());
    model.show(new RecordState("site.db", true, "", Optional.of(Instant.EPOCH), List.of()));
    assertTrue(model.page().get().sentence().startsWith("The record site.db holds no job yet."));
    model.show(
        new RecordState("site.db", false, "There is no record.", Optional.empty(), List.of()));
    assertEquals(
        "There is no record. As soon as it can be read, its jobs appear here by themselves.",
        model.page().get().sentence());
  }

  @Test
  void openingNamesJobAndStage() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    model.open(onlyCard());
    model.open(onlyCard(), onlyCard().stages().get(4));
    assertEquals(List.of("fernhollow-03/", "fernhollow-03/lift"), opened);
  }

  @Test
  void filterFindsWordsOfNameSiteCrewSlabLayerAndDate() {
    model.show(InventedJobs.state(InventedJobs.reduced()));
    for (String fits : List.of("tool", "FERNHOLLOW blue", "millgate", "2026-03-04", " ", "-03")) {
      model.filter(JobFilter.ALL.withText(fits));
      assertEquals(1, model.page().get().cards().size(), fits);
    }
    model.filter(JobFilter.ALL.withText("tool amber"));
    assertEquals(List.of(), model.page().get().cards());
    assertEquals(
        "No job of the record fits all that is asked for: the words “tool amber”. Esc shows all"
            + " jobs again.",
        model.page().get().sentence());
    assertEquals("0 of 1 jobs in the record", model.page().get().heading());
  }

  @Test
  void filtersOfCrewSiteAndSlabLayerHoldTogether() {
    model.show(InventedCrews.state(24));
    assertEquals(List.of("Amber", "Blue"), model.page().get().crews());
    assertEquals(List.of("Aldermoor", "Fernhollow"), model.page().get().sites());
    model.filter(JobFilter.ALL.withCrew("Amber"));
    assertEquals("12 of 24 jobs in the record", model.page().get().heading());
    model.filter(model.filter().withSite("Fernhollow"));
    int both = model.page().get().cards().size();
    assertTrue(both > 0 && both < 12, both + " jobs");
    assertTrue(
        model.page().get().cards().stream()
            .allMatch(card -> card.particulars().contains("Site Fernhollow  ·  Crew Amber")));
    model.filter(model.filter().withSlabBy("nobody"));
    assertEquals(
        "No job of the record fits all that is asked for: crew Amber, site Fernhollow, slab laid by"
            + " nobody. Esc shows all jobs again.",
        model.page().get().sentence());
    model.filter(JobFilter.ALL);
    assertEquals("24 jobs in the record", model.page().get().heading());
  }

  @Test
  void periodIsOneInWhichThereWasWork() {
    JobState job =
        worked(Optional.of(LocalDate.of(2026, 3, 2)), Optional.of("2026-03-04T23:30:00Z"));
    assertTrue(fits(job, "2026-03-03", "2026-03-03"));
    assertTrue(fits(job, "", "2026-03-02"));
    assertFalse(fits(job, "", "2026-03-01"));
    assertTrue(fits(job, "2026-03-05", ""), "half past eleven UTC is the next day here");
    assertFalse(fits(job, "2026-03-06", ""));
    JobState begun = worked(Optional.of(LocalDate.of(2026, 3, 2)), Optional.empty());
    assertTrue(fits(begun, "2026-03-02", "2026-03-02"));
    assertFalse(fits(begun, "2026-03-03", ""));
    JobState dayless = worked(Optional.empty(), Optional.empty());
    assertFalse(fits(dayless, "2026-01-01", ""));
    assertTrue(fits(dayless, "", ""));
  }

  private static JobState worked(Optional<LocalDate> started, Optional<String> last) {
    return new JobState(
        new JobRow("a-1", "A", last.map(Instant::parse), 1, ""),
        Optional.of(new JobOverview("", "", "", started, List.of(), "")),
        Optional.empty(),
        "",
        true,
        Optional.empty());
  }

  private static boolean fits(JobState job, String from, String to) {
    return JobFilter.ALL.between(day(from), day(to)).fits(job, ZoneOffset.ofHours(1));
  }

  private static Optional<LocalDate> day(String text) {
    return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
  }

  @Test
  void filterIsThereAtTheNextStart() {
    Map<String, String> kept = new HashMap<>();
    model.onFilter(kept::putAll);
    JobFilter set =
        new JobFilter("tool", "Amber", "Fernhollow", "", day("2026-03-01"), Optional.empty());
    model.filter(set);
    JobsViewModel again = new JobsViewModel(Words.of(Locale.ROOT), ZoneOffset.UTC, (job, at) -> {});
    again.restore(kept);
    assertEquals(set, again.filter());
    kept.put("jobs.from", "yesterday");
    again.restore(kept);
    assertEquals(Optional.empty(), again.filter().from());
  }
}
