package datumpeg.desktop.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.Overviews;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RecordFollowerTest {
  private final InventedSource source = new InventedSource();
  private final List<RecordState> published = new ArrayList<>();
  private final RecordFollower follower =
      new RecordFollower(
          "site.db",
          source,
          Clock.fixed(Instant.parse("2026-03-04T08:00:00Z"), ZoneOffset.UTC),
          published::add,
          () -> source.nanos);

  private RecordState last() {
    return published.get(published.size() - 1);
  }

  @Test
  void listsJobsFirstThenWorksThemOut() {
    source.add(InventedJobs.row("1"));
    follower.preferred(InventedJobs.ID);
    follower.turn();
    assertEquals(Optional.empty(), published.get(0).jobs().get(0).work());
    assertTrue(last().jobs().get(0).work().isPresent());
    assertTrue(last().reached());
    assertEquals(Optional.of(Instant.parse("2026-03-04T08:00:00Z")), last().readAt());
  }

  @Test
  void publishesNothingWhileNothingChanges() {
    source.add(InventedJobs.row("1"));
    follower.turn();
    int before = published.size();
    follower.turn();
    follower.turn();
    assertEquals(before, published.size());
    assertEquals(1, source.reduced.size());
  }

  @Test
  void worksOutOnlyTheJobWhoseRowsChanged() {
    source.add(row("a", "1"));
    source.add(row("b", "1"));
    follower.turn();
    source.replace(row("b", "2"));
    follower.turn();
    assertEquals(List.of("a", "b", "b"), source.reduced);
  }

  @Test
  void keepsShowingTheOldFindingsUntilTheNewOnesAreThere() {
    follower.preferred("a");
    source.add(row("a", "1"));
    follower.turn();
    int before = published.size();
    source.replace(row("a", "2"));
    follower.turn();
    JobState meanwhile = published.get(before).jobs().get(0);
    assertTrue(meanwhile.work().isPresent());
    assertFalse(meanwhile.settled());
    assertTrue(last().jobs().get(0).settled());
  }

  @Test
  void worksOutThePreferredJobFirst() {
    source.add(row("a", "1"));
    source.add(row("b", "1"));
    source.add(row("c", "1"));
    follower.preferred("c");
    follower.turn();
    assertEquals(List.of("c", "a", "b"), source.reduced);
  }

  @Test
  void missingRecordIsSaidOnceAndTriedAgain() {
    source.failure = new InputException("There is no record at site.db yet.");
    follower.turn();
    follower.turn();
    assertEquals(1, published.size());
    assertEquals("There is no record at site.db yet.", last().trouble());
    source.failure = null;
    source.add(row("a", "1"));
    follower.turn();
    assertEquals("", last().trouble());
    assertEquals(1, last().jobs().size());
  }

  @Test
  void lockedRecordKeepsWhatWasRead() {
    source.add(row("a", "1"));
    follower.turn();
    source.failure = new OuterWorldException("The record site.db is locked.");
    follower.turn();
    assertFalse(last().reached());
    assertEquals("The record site.db is locked.", last().trouble());
    assertEquals(1, last().jobs().size());
    assertEquals(1, source.closed, "a record that failed is opened afresh");
    source.failure = null;
    follower.turn();
    assertTrue(last().reached());
  }

  @Test
  void recordToWhichNothingCanBeAddedIsShownAndClosedBetweenTwoLooks() {
    source.add(row("a", "1"));
    source.obstacle = "The disk of the record site.db is full.";
    follower.turn();
    assertTrue(last().reached());
    assertEquals("The disk of the record site.db is full.", last().trouble());
    assertTrue(last().job("a").orElseThrow().overview().isPresent());
    assertEquals(1, source.closed);
    follower.turn();
    follower.turn();
    assertEquals(1, source.opened, "it is left alone for a while");
    follower.preferred("a");
    follower.turn();
    assertTrue(last().job("a").orElseThrow().work().isPresent(), "but what is asked for is read");
    assertEquals(2, source.opened);
    assertEquals(2, source.closed);
    source.obstacle = "";
    source.nanos += 5_000_000_000L;
    follower.turn();
    follower.turn();
    assertEquals("", last().trouble());
    assertEquals(3, source.opened);
    assertEquals(2, source.closed, "with room it stays open");
  }

  @Test
  void anotherFileInThePlaceOfTheRecordIsOpened() {
    source.add(row("a", "1"));
    follower.turn();
    source.identity = "another";
    source.rows.clear();
    follower.turn();
    assertEquals(2, source.opened);
    assertEquals(1, source.closed);
    assertEquals(List.of(), last().jobs());
  }

  @Test
  void jobThatCannotBeWorkedOutDoesNotHideTheOthers() {
    source.add(row("a", "1"));
    source.add(row("b", "1"));
    source.unreadable = "a";
    follower.turn();
    assertEquals("a has an unknown key.", last().job("a").orElseThrow().trouble());
    assertTrue(last().job("b").orElseThrow().overview().isPresent());
  }

  @Test
  void onlyTheJobOnScreenIsHeldWhole() {
    source.add(row("a", "1"));
    source.add(row("b", "1"));
    follower.preferred("a");
    follower.turn();
    assertTrue(last().job("a").orElseThrow().work().isPresent());
    assertTrue(last().job("b").orElseThrow().work().isEmpty());
    follower.preferred("b");
    follower.turn();
    assertTrue(last().job("a").orElseThrow().work().isEmpty());
    assertTrue(last().job("a").orElseThrow().overview().isPresent());
    assertTrue(last().job("b").orElseThrow().work().isPresent());
  }

  @Test
  void jobThatWasWorkedOutBeforeIsNotWorkedOutAgain() {
    ReducedJob work = InventedJobs.unmeasured();
    JobOverview known = Overviews.of(work.job(), work.findings(), work.holdPoints());
    source.add(new JobRow("a", "", Optional.empty(), 1, "1", Optional.of(known), true));
    source.add(new JobRow("b", "", Optional.empty(), 1, "1", Optional.of(known), false));
    follower.turn();
    assertEquals(List.of("b"), source.reduced);
    assertTrue(published.get(0).job("a").orElseThrow().settled());
    assertTrue(published.get(0).job("b").orElseThrow().overview().isPresent());
  }

  @Test
  void outcomesOfAllJobsAreReadOnlyWhileAScreenAsks() {
    source.add(row("a", "1"));
    source.add(row("b", "1"));
    follower.turn();
    assertEquals(List.of(), source.asked);
    follower.outcomesWanted(true);
    follower.turn();
    assertEquals(List.of("a", "b"), source.asked);
    assertTrue(last().job("b").orElseThrow().outcomes().isPresent());
    follower.outcomesWanted(false);
    follower.turn();
    assertTrue(last().job("b").orElseThrow().outcomes().isEmpty());
  }

  /** Each of 20 jobs takes longer than a turn: not every turn is told. */
  @Test
  void outcomesOfManyJobsAreToldNowAndThen() {
    for (int i = 10; i < 30; i++) {
      source.add(row(String.valueOf(i), "1"));
    }
    follower.turn();
    published.clear();
    source.nanosForOutcomes = 160_000_000;
    follower.outcomesWanted(true);
    for (int turn = 0; turn < 20; turn++) {
      follower.turn();
    }
    assertEquals(20, source.asked.size());
    assertTrue(last().jobs().stream().allMatch(job -> job.outcomes().isPresent()));
    // Every fourth turn is the first behind the 600 ms that a state stands, and the last is told.
    assertEquals(5, published.size());
  }

  @Test
  void defectIsSaidAndRestsForSomeTurns() {
    source.add(row("a", "1"));
    follower.turn();
    int opened = source.opened;
    follower.failed("This is a defect.");
    assertEquals("This is a defect.", last().trouble());
    follower.turn();
    assertEquals(opened, source.opened);
    for (int turn = 0; turn < 20; turn++) {
      follower.turn();
    }
    assertTrue(last().reached());
  }

  @Test
  void closingClosesTheRecord() {
    source.add(row("a", "1"));
    follower.turn();
    follower.close();
    follower.close();
    assertEquals(1, source.closed);
  }

  @Test
  void jobIsFoundByItsId() {
    source.add(row("a", "1"));
    follower.turn();
    assertSame(last().jobs().get(0), last().job("a").orElseThrow());
    assertEquals(Optional.empty(), last().job("z"));
  }

  private static JobRow row(String id, String content) {
    return new JobRow(id, "", Optional.empty(), 1, content);
  }
}
