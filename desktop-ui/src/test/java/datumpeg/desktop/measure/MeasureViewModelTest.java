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
import datumpeg.desktop.text.Words;
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
    letters.chars().forEach(letter -> model.typed(Character.toString(letter)));
  }

  private void value(String text) {
    key(text);
    model.enter();
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
    model.pressed("F13"); // a key of no meaning
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
    model.enter();
    model.enter();
    value("18.002");
    untilBig("18.002 m", Stands.RECORDED);
    assertEquals(1, log().readings().size());
  }

  @Test
  void theFootSwitchAcceptsWhatIsHeldOnceItsKeyIsKnown() {
    begin("arrival", "");
    assertFalse(model.pressed("Page Down"));
    key("f");
    assertTrue(model.pressed("Page Down"));
    value("17.8");
    until("it is held", () -> !running().question().isEmpty());
    assertTrue(model.pressed("Page Down"));
    untilBig("17.8 m", Stands.RECORDED);
    assertTrue(model.pressed("Page Down"), "with nothing held it does nothing, and is swallowed");
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
}
