package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.desktop.app.SampleJob;
import datumpeg.desktop.measure.MeasurePage.Stands;
import datumpeg.desktop.text.Standing;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The list of a stage's targets, and the questions of a stage. */
final class MeasureTargetsTest extends MeasuringAtHand {
  MeasureTargetsTest(@TempDir Path folder) {
    super(folder);
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
  void aHeldValueOfSeveralTargetsIsAskedAboutAsSuch() {
    begin("arrival", "");
    value("18.004");
    untilBig("18.004 m", Stands.RECORDED);
    assertTrue(running().bigShort().startsWith("the last one, +4.0 mm off its plan"));
    value("9.004");
    until("it is held", () -> running().choices().size() > 1);
    assertTrue(running().question().contains("Which target is it?"), running().question());
    assertTrue(running().choices().get(1).contains("A1 to B1"), running().choices().toString());
    assertFalse(
        running().acts().stream()
            .filter(button -> button.act() == Act.ACCEPT)
            .findFirst()
            .orElseThrow()
            .possible(),
        "accepting would take one of them for granted");
    model.session().choice(1);
    untilBig("9.004 m", Stands.RECORDED);
  }
}
