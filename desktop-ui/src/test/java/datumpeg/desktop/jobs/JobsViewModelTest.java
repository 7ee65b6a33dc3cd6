package datumpeg.desktop.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
      model.filter(fits);
      assertEquals(1, model.page().get().cards().size(), fits);
    }
    model.filter("tool amber");
    assertEquals(List.of(), model.page().get().cards());
    assertEquals("No job has all of these words: tool amber", model.page().get().sentence());
    assertEquals("0 of 1 jobs in the record", model.page().get().heading());
  }
}
