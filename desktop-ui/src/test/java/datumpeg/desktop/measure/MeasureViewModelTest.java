package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.collect.Guide;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.desktop.measure.MeasurePage.Stands;
import datumpeg.desktop.source.InventedJobs;
import datumpeg.desktop.source.JobRow;
import datumpeg.desktop.source.RecordState;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session as a whole: what is asked, recorded, held, withdrawn. */
final class MeasureViewModelTest extends MeasuringAtHand {
  MeasureViewModelTest(@TempDir Path folder) {
    super(folder);
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

  /** Nothing but what was kept at each change is left of the window, as after a kill. */
  @Test
  void anotherWindowGoesOnAtTheTargetThatWasAskedFor() {
    begin("arrival", "");
    key("s");
    until("it is skipped", () -> running().instruction().endsWith("slab corner B4"));
    value("20.126");
    untilBig("20.126 m", Stands.RECORDED);
    String asked = running().instruction();
    Map<String, String> left = new TreeMap<>(kept);
    sessions.close();
    until("it has ended", () -> page().running().isEmpty());
    model = opened();
    model.restore(left);
    model.show(InventedJobs.state(InventedJobs.reduced()));
    assertEquals("", page().goOn(), "the record has no such job");
    model.show(jobOf("larkrise-01"));
    assertEquals("Go on: Hay shed, Arrival", page().goOn());
    model.goOn();
    until("the same target", () -> running().instruction().equals(asked));
    left.put("measure.left.target", "distance slab.A1-slab.B4");
    key("q");
    until("it has ended", () -> page().running().isEmpty());
    model.restore(left);
    model.goOn();
    until("the one behind what is answered", () -> running().instruction().equals(asked));
  }

  private static RecordState jobOf(String id) {
    return InventedJobs.state(
        List.of(
            InventedJobs.cannot(new JobRow(id, "Hay shed", Optional.empty(), 0, "1"), "unread")));
  }

  @Test
  void aWatchedTargetIsRecordedOnlyWhenKept() {
    begin("lift", "column.A2/across");
    value("0.5");
    untilBig("+31.4 mm", Stands.OUTSIDE);
    assertEquals("OUTSIDE the limit for sure (0.5°, toward side B)", running().bigWords());
    assertEquals("plumb", running().expected());
    assertEquals("toward side B", running().bar().orElseThrow().leftWords());
    assertTrue(running().bar().orElseThrow().isMirrored(), "as the portal frame is drawn");
    value("-0.1");
    untilBig("−6.3 mm", Stands.OUTSIDE);
    assertEquals("too close to call (−0.1°, toward side A)", running().bigWords());
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
        "it is said",
        () ->
            page()
                .elsewhere()
                .contains(
                    "Recorded 18.004 m for the distance from slab corner A1 to slab corner A4."));
    model.shown(true);
    assertEquals("", page().elsewhere());
  }
}
