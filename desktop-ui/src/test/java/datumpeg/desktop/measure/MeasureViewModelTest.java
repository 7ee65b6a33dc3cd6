package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.collect.Guide;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.app.SampleJob;
import datumpeg.desktop.measure.MeasurePage.Running;
import datumpeg.desktop.measure.MeasurePage.Stands;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Measuring on a real record, without a toolkit: the test's thread is the screen's. */
class MeasureViewModelTest {
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final List<String> heard = new ArrayList<>();
  private final Map<String, String> kept = new TreeMap<>();
  private final Path file;
  private final RecordSessions sessions;
  private MeasureViewModel model;

  MeasureViewModelTest(@TempDir Path folder) {
    file = folder.resolve("site.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.run(sample.steps().get(0));
    sessions =
        new RecordSessions(
            file, "test", Clock.systemUTC(), ZoneOffset.UTC, Words.of(Locale.ROOT), screen::add);
    model = opened();
  }

  private MeasureViewModel opened() {
    MeasureViewModel fresh =
        new MeasureViewModel(
            Words.of(Locale.ROOT),
            sessions,
            new Sounds() {
              @Override
              public void accepted() {
                heard.add("accepted");
              }

              @Override
              public void held() {
                heard.add("held");
              }
            },
            kept::putAll);
    fresh.shown(true);
    fresh.choose("larkrise-01", "arrival");
    return fresh;
  }

  @AfterEach
  void close() {
    sessions.close();
  }

  private void until(String what, BooleanSupplier holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!holds.getAsBoolean()) {
      try {
        Runnable next = screen.poll(100, TimeUnit.MILLISECONDS);
        if (next != null) {
          next.run();
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      assertTrue(System.nanoTime() < end, () -> "It did not come about: " + what + " " + page());
    }
  }

  private MeasurePage page() {
    return model.page().get();
  }

  private Running running() {
    return page().running().orElseThrow();
  }

  private void begin(String stage, String watched) {
    model.begin(
        new SessionWish(
            "larkrise-01",
            stage,
            watched,
            Guide.Order.LISTED,
            OptionalInt.empty(),
            "Ines",
            List.of()));
    until("something is asked for", () -> running().sketch().isPresent());
  }

  private void key(String letters) {
    letters.chars().forEach(letter -> model.session().typed(Character.toString(letter)));
  }

  private void value(String text) {
    key(text);
    model.session().enter();
  }

  private void untilBig(String big, Stands stands) {
    until(big, () -> running().big().equals(big) && running().bigStands() == stands);
  }

  private JobLog log() {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      return record.log(StoredJob.find(record, "larkrise-01"));
    }
  }

  @Test
  void whatIsStillToBeMeasuredIsCountedAndNoPortIsNeeded() {
    until("the stages are found", () -> page().choices().isPresent());
    Sessions.StageChoice arrival = page().choices().orElseThrow().stages().get(0);
    assertEquals("arrival", arrival.id());
    assertTrue(arrival.allCount() > 10, arrival.toString());
    assertEquals(arrival.allCount(), arrival.openCount());
    assertTrue(page().choices().orElseThrow().profiles().contains("general-text-line"));
    assertEquals("", page().sentence());
  }

  @Test
  void typedValuesAreRecordedAndDoubtfulOnesHeldAndAskedAbout() {
    begin("arrival", "");
    assertEquals("Measure from slab corner A1 to slab corner A4", running().instruction());
    assertEquals("18.000 m", running().expected());
    value("18.004");
    untilBig("18.004 m", Stands.RECORDED);
    assertEquals("Measure from slab corner A1 to slab corner B4", running().instruction());
    value("19.126");
    untilBig("19.126 m", Stands.HELD);
    assertTrue(running().question().contains("about 1 m less than the plan"), running().question());
    assertEquals(List.of("accepted", "held"), heard);
    assertEquals(1, log().inForce().size(), "what is held is not recorded");
    model.session().pressed("F13"); // a key of no meaning
    key("r");
    until("it is put aside", () -> running().question().isEmpty());
    value("20.126");
    untilBig("20.126 m", Stands.RECORDED);
    key("u");
    untilBig("18.004 m", Stands.RECORDED);
    assertEquals(1, log().inForce().size());
    assertEquals(1, log().voids().size());
    key("q");
    until("the session ends", () -> page().running().isEmpty());
    assertEquals("One reading was recorded in the last session.", page().sentence());
    ReadingEntry reading = log().inForce().get(0).entry();
    assertEquals("Ines", reading.operator());
    assertEquals("keyboard:", reading.link());
  }

  @Test
  void enterWithoutAValueNeverAcceptsWhatIsHeld() {
    begin("arrival", "");
    value("11.5");
    until("it is held", () -> !running().question().isEmpty());
    model.session().enter();
    model.session().enter();
    value("18.002");
    untilBig("18.002 m", Stands.RECORDED);
    assertEquals(1, log().readings().size());
  }

  @Test
  void theFootSwitchAcceptsWhatIsHeldOnceItsKeyIsKnown() {
    begin("arrival", "");
    assertFalse(model.session().pressed("Page Down"));
    key("f");
    assertTrue(model.session().pressed("Page Down"));
    value("17.8");
    until("it is held", () -> !running().question().isEmpty());
    assertTrue(model.session().pressed("Page Down"));
    untilBig("17.8 m", Stands.RECORDED);
    assertTrue(
        model.session().pressed("Page Down"),
        "with nothing held it does nothing, and is swallowed");
    assertEquals("Page Down", kept.get("measure.foot"));
    MeasureViewModel later = opened();
    later.restore(kept);
    assertEquals("Page Down", later.remembered().footKey());
    assertEquals("Ines", later.remembered().operator());
  }

  @Test
  void aSessionThatWasClosedGoesOnAtTheSameTarget() {
    begin("arrival", "");
    value("18.004");
    untilBig("18.004 m", Stands.RECORDED);
    String asked = running().instruction();
    sessions.close();
    until("it has ended", () -> page().running().isEmpty());
    model = opened();
    begin("arrival", "");
    assertEquals(asked, running().instruction());
  }

  @Test
  void aWatchedTargetIsRecordedOnlyWhenKept() {
    begin("lift", "column.A2/across");
    value("0.5");
    untilBig("+31.4 mm", Stands.OUTSIDE);
    assertEquals(List.of(), heard);
    value("0.005");
    untilBig("+0.3 mm", Stands.INSIDE);
    assertEquals(List.of("accepted"), heard);
    assertTrue(running().bar().orElseThrow().words().startsWith("Limit ±7.2 mm less ±"));
    assertEquals(0, log().readings().size());
    key("a");
    until("it ends with the value kept", () -> page().running().isEmpty());
    assertEquals(
        List.of("0.005"), log().readings().stream().map(row -> row.entry().value()).toList());
  }

  @Test
  void tonesCanBeTurnedOff() {
    begin("arrival", "");
    key("t");
    value("18.004");
    untilBig("18.004 m", Stands.RECORDED);
    assertEquals(List.of(), heard);
  }

  @Test
  void whatCannotBeginSaysWhy() {
    model.begin(
        new SessionWish(
            "larkrise-01", "arrival", "", Guide.Order.ANY, OptionalInt.of(0), "", List.of()));
    until("it is said", () -> page().running().isEmpty());
    assertTrue(
        page().sentence().startsWith("The round is 0; expected 1 or more."), page().sentence());
    model.begin(
        new SessionWish(
            "larkrise-01",
            "arrival",
            "",
            Guide.Order.ANY,
            OptionalInt.empty(),
            "",
            List.of(new SessionWish.LinkWish("serial:/dev/ttyNoSuch7", "general-text-line"))));
    until("it is said", () -> page().running().isEmpty());
    assertTrue(page().sentence().contains("/dev/ttyNoSuch7"), page().sentence());
  }

  private MeasurePage.TargetChoices targets() {
    return running().targets().orElseThrow();
  }

  private MeasurePage.TargetChoice target(int index) {
    return targets().choices().get(index);
  }

  @Test
  void anyTargetIsGoneToFromAListThatSaysHowEachStands() {
    begin("arrival", "");
    value("18.004");
    untilBig("18.004 m", Stands.RECORDED);
    key("g");
    until("they are found", () -> !targets().choices().isEmpty());
    assertEquals(Standing.NOT_MEASURED, target(1).standing());
    assertEquals("not measured", target(1).how());
    assertEquals("18.004 m, conforming", target(0).how());
    model.session().goTo(target(3).wanted());
    assertTrue(running().targets().isEmpty(), "the list is still there");
    String chosen = "Measure from slab corner A4 to slab corner B4";
    until("it is asked for", () -> running().instruction().equals(chosen));
    key("g");
    until("they are found", () -> !targets().choices().isEmpty());
    value("9.003");
    until("the list follows", () -> target(3).how().startsWith("9.003 m, "));
    model.session().escape();
    assertTrue(running().targets().isEmpty(), "Escape closes it");
    key("g");
    until("they are found", () -> !targets().choices().isEmpty());
    model.session().goTo(target(0).wanted());
    until(
        "what was measured can be measured again",
        () -> running().instruction().equals("Measure from slab corner A1 to slab corner A4"));
    value("18.005");
    untilBig("18.005 m", Stands.RECORDED);
    assertEquals(3, log().inForce().size());
  }

  @Test
  void theListSaysWhatIsUndecided() {
    begin("arrival", "");
    // The sides and diagonals of a rectangle of 18 by 9 m, the one side 9 mm longer than allowed
    // 10.
    for (String metres : List.of("18.009", "20.130", "9.000", "9.000", "20.125", "18.000")) {
      value(metres);
    }
    until("six are recorded", () -> log().inForce().size() == 6);
    key("g");
    until(
        "they are found",
        () -> targets().choices().stream().anyMatch(one -> one.how().contains("undecided")));
    MeasurePage.TargetChoice undecided =
        targets().choices().stream()
            .filter(one -> one.standing() == Standing.UNDECIDED)
            .findFirst()
            .orElseThrow();
    assertTrue(undecided.how().contains(" m, undecided"), undecided.how());
  }

  private void beginWithAQuestion() {
    SampleJob sample = SampleJob.of("larkrise-01", file);
    try {
      Path job = file.resolveSibling("with-question.toml");
      Files.writeString(
          job,
          Files.readString(sample.folder().resolve("job.toml"))
              + """

              [stages.curing]
              after = "arrival"
              checks = []
              questions = { edge-sound = "Is the edge sound?", swept = "Is the slab swept?" }
              hold_point = true
              """);
      sample.run("job add " + job);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    begin("curing", "");
    assertEquals("Answer: Is the edge sound?", running().instruction());
    assertEquals("yes or no", running().expected());
  }

  @Test
  void questionsOfTheStageAreAnsweredByTheirOwnTwoKeysOnly() {
    model.session().act(Act.FOOT);
    model.session().pressed("Page Down");
    beginWithAQuestion();
    assertEquals("Yes  (Y)", running().acts().get(0).text());
    assertEquals("No  (N)", running().acts().get(1).text());
    key("ar"); // accept and again are about held values
    assertTrue(model.session().pressed("Page Down"), "the foot switch answers no question");
    key("n");
    untilBig("no", Stands.RECORDED);
    until("the next is asked", () -> running().instruction().equals("Answer: Is the slab swept?"));
    assertEquals(1, log().inForce().size());
    model.session().act(Act.ACCEPT);
    until("it ends", () -> page().running().isEmpty());
    List<ReadingEntry> answers = log().inForce().stream().map(row -> row.entry()).toList();
    assertEquals(
        List.of("attribute edge-sound no", "attribute swept yes"),
        answers.stream()
            .map(one -> one.quantity() + " " + one.target() + " " + one.value())
            .sorted()
            .toList());
  }

  @Test
  void aHeldValueIsAnsweredByYesAndNoToo() {
    begin("arrival", "");
    value("19.001");
    until("it is held", () -> running().question().endsWith("Is it right? Y or N."));
    key("n");
    until("it is put aside", () -> running().question().isEmpty());
    value("17.004");
    until("it is held", () -> !running().question().isEmpty());
    key("y");
    untilBig("17.004 m", Stands.RECORDED);
    assertEquals(1, log().readings().size());
  }

  @Test
  void otherScreensSayHowTheSessionStands() {
    begin("arrival", "");
    assertEquals("", page().elsewhere());
    model.shown(false);
    assertTrue(
        page().elsewhere().endsWith("Measure from slab corner A1 to slab corner A4"),
        page().elsewhere());
    key("18.0");
    assertTrue(page().elsewhere().contains("Typed: 18.0."), page().elsewhere());
    key("04");
    model.session().enter();
    until(
        "it is said", () -> page().elsewhere().contains("Recorded 18.004 m for slab.A1-slab.A4."));
    model.shown(true);
    assertEquals("", page().elsewhere());
  }
}
