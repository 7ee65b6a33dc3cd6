package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guided measuring through a pipe: what is typed, what is asked, what is stored. */
class GuidedMeasuringTest {
  @TempDir Path folder;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withJob(folder).console;
  }

  private void measure(String typed, String... more) {
    measureStage("arrival", typed, more);
  }

  private void measureStage(String stage, String typed, String... more) {
    String[] words =
        Stream.concat(Stream.of("measure", "larkrise-01", "--stage", stage), Stream.of(more))
            .toArray(String[]::new);
    assertEquals(0, console.runWithInput(typed, words), console.err());
  }

  private static JobLog log(TestConsole console) {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01"));
    }
  }

  private List<ReadingEntry> inForce() {
    return log(console).inForce().stream().map(row -> row.entry()).toList();
  }

  @Test
  void aBareNumberMeansWhatItMustByThePlan() {
    measure("18003\n20,126\nquit\n");
    assertEquals(18.003, inForce().get(0).siValue(), 1e-12);
    assertEquals("18003", inForce().get(0).value());
    assertEquals("mm", inForce().get(0).unit());
    assertEquals(20.126, inForce().get(1).siValue(), 1e-12);
  }

  @Test
  void aDroppedMetreIsHeldAndTakenOnlyWhenThePersonSaysSo() {
    measure("17.003\nquit\n");
    assertTrue(console.err().contains("HELD: 17.003 m"), console.err());
    assertTrue(console.err().contains("about 1 m less than the plan says"), console.err());
    assertEquals(0, inForce().size());
    measure("17.003\nyes\nquit\n");
    assertEquals(17.003, inForce().get(0).siValue(), 1e-12);
  }

  @Test
  void aHeldValueGivesWayToANewOneAndIsToldAside() {
    measure("17.003\n18.003\nquit\n");
    assertTrue(console.err().contains("17.003 m is not taken"), console.err());
    assertEquals(1, inForce().size());
    assertEquals(18.003, inForce().get(0).siValue(), 1e-12);
  }

  @Test
  void justInsideTheRuleNothingIsAskedAndJustOutsideItIs() {
    measure("18.049\nquit\n");
    assertFalse(console.err().contains("HELD"), console.err());
    assertEquals(1, inForce().size());
    measure("undo\n20.300\nquit\n");
    assertTrue(console.err().contains("HELD: 20.300 m"), console.err());
    assertEquals(1, inForce().size());
  }

  @Test
  void measuringAgainGoesOnAtTheTargetWhereOneStopped() {
    measure("18.003\nquit\n");
    String first = inForce().get(0).target();
    measure("quit\n");
    assertTrue(console.err().contains("1 of "), console.err());
    assertFalse(console.err().contains("(distance " + first), console.err());
    assertTrue(
        console.err().contains("Measure from slab corner A1 to slab corner B4, plan "),
        console.err());
  }

  @Test
  void aSecondVisitIsARoundOfItsOwn() {
    measure("18.003\nquit\n");
    measure("18.004\nquit\n", "--round", "2");
    assertEquals(
        Set.of(1, 2), inForce().stream().map(ReadingEntry::round).collect(Collectors.toSet()));
    assertEquals(inForce().get(0).target(), inForce().get(1).target());
  }

  @Test
  void inAnyOrderAValueFindsItsTargetAndAnAmbiguousOneIsAskedAbout() {
    measure("20.126\n2\nquit\n", "--any-order");
    assertTrue(console.err().contains("could be one of several targets"), console.err());
    assertEquals(1, inForce().size());
    assertTrue(inForce().get(0).target().contains("slab.A4-slab.B1"), console.err());
    // The other diagonal is now the only target that this can be.
    measure("20.127\nquit\n", "--any-order");
    assertFalse(console.err().contains("several targets"), console.err());
    assertEquals(
        Set.of("slab.A1-slab.B4", "slab.A4-slab.B1"),
        inForce().stream().map(ReadingEntry::target).collect(Collectors.toSet()));
  }

  @Test
  void ofMoreThanNineChoicesEachCanBeChosenAndYesChoosesNone() {
    measureStage("lift", "0.07 deg\nyes\n12\nquit\n", "--any-order");
    assertTrue(console.err().contains("say which by its number"), console.err());
    String twelfth =
        console
            .err()
            .lines()
            .filter(line -> line.startsWith("    12  "))
            .map(line -> line.replaceFirst(".*\\(\\S+ ([^ )]+).*", "$1"))
            .findFirst()
            .orElseThrow();
    assertEquals(List.of(twelfth), inForce().stream().map(ReadingEntry::target).toList());
  }

  @Test
  void aWrongTargetIsAnsweredWithTheNearest() {
    measure("go slab.A1-slab.B5\nquit\n");
    assertTrue(console.err().contains("; the nearest is slab.A1-slab.B"), console.err());
    assertEquals(2, console.run("watch", "larkrise-01", "column.A3/acros"));
    assertTrue(console.err().contains("the nearest is 'column.A3/across'"), console.err());
  }

  @Test
  void aTiltFindsTheTiltTargetWhileADistanceIsAskedFor() {
    measureStage("lift", "0.1 deg\n5.936 m\nquit\n");
    List<String> quantities = inForce().stream().map(ReadingEntry::quantity).toList();
    assertTrue(quantities.contains("tilt"), quantities.toString());
    assertTrue(quantities.contains("distance"), quantities.toString());
  }

  @Test
  void aTiltFarFromPlumbIsHeld() {
    measureStage("lift", "2.1 deg\nquit\n");
    assertTrue(console.err().contains("HELD: 2.1 deg"), console.err());
    assertEquals(0, inForce().size());
  }

  @Test
  void nothingIsSaidBySoundAloneAndSilenceIsAnOption() {
    measure("18.003\n17.0\nquit\n");
    assertTrue(console.err().contains("\u0007"));
    String withTones = console.err().replace("\u0007", "");
    measure("undo\nquit\n");
    console.run("void", "larkrise-01", inForce().get(0).id().toString(), "--why", "test");
    measure("18.003\n17.0\nquit\n", "--silent");
    assertFalse(console.err().contains("\u0007"));
    assertEquals(withTones, console.err());
  }

  @Test
  void bigLettersShowTheTarget() {
    measure("quit\n", "--big");
    assertTrue(console.err().contains("#####"), console.err());
  }

  @Test
  void whenTheListIsDoneWhatWouldDecideIsAskedFor() {
    // 0.11 deg is 6.9 mm over 3.6 m, where 7.2 mm are allowed: too close to call on one face.
    String tilts =
        "0.11 deg\n-0.11 deg\n"
            + "0.11 deg\n".repeat(8)
            + "-0.11 deg\n"
            + "0.11 deg\n".repeat(7)
            + "-0.11 deg\n";
    measureStage("lift", tilts + "skip\n".repeat(60));
    List<ReadingEntry> tiltReadings =
        inForce().stream().filter(reading -> reading.quantity().equals("tilt")).toList();
    assertEquals(19, tiltReadings.size(), console.err());
    assertEquals(3, tiltReadings.stream().filter(reading -> reading.face() == 2).count());
    long secondFacesAsked = console.err().split(", face 2", -1).length - 1L;
    assertTrue(secondFacesAsked > 3, console.err());
  }

  @Test
  void aWatchedValueIsRecordedOnlyWhenItIsConfirmed() {
    String[] watch = {"watch", "larkrise-01", "column.A3/across", "--stage", "lift"};
    assertEquals(0, console.runWithInput("0.3 deg\n0 deg\nquit\n", watch), console.err());
    assertEquals(0, inForce().size());
    assertTrue(console.err().contains("outside or too close to call"), console.err());
    assertTrue(console.err().contains("INSIDE"), console.err());
    assertEquals(0, console.runWithInput("0.3 deg\n0.02 deg\nkeep\n", watch), console.err());
    assertEquals(1, inForce().size());
    assertEquals("0.02 deg", inForce().get(0).value());
    assertEquals("column.A3/across", inForce().get(0).target());
    assertEquals(
        2, console.runWithInput("", "watch", "larkrise-01", "column.Z9/across"), console.err());
  }

  @Test
  void aWatchedValueIsOfTheStageTheWorkIsAt() {
    String[] watch = {"watch", "larkrise-01", "column.A3/across"};
    assertEquals(0, console.runWithInput("0.02 deg\nkeep\n", watch), console.err());
    measureStage("tightening", "0.01 deg\nquit\n");
    assertEquals(0, console.runWithInput("0.03 deg\nkeep\n", watch), console.err());
    assertEquals(
        List.of("lift", "tightening", "tightening"),
        inForce().stream().map(ReadingEntry::stage).sorted().toList());
  }

  @Test
  void anyTargetIsGoneToOutOfTurnAndTheListGoesOnBehindIt() throws IOException {
    measure("go slab.A1-slab.B4\n20.126\nquit\n");
    assertEquals("slab.A1-slab.B4", inForce().get(0).target());
    String behind = console.err().substring(console.err().indexOf("recorded 20.126"));
    assertTrue(behind.contains("Measure from slab corner A1 to slab corner B1"), console.err());
    measure("go distance slab.A1-slab.B4\n20.127\n18.003\ngo slab.Z9\nquit\n");
    assertEquals(
        List.of("slab.A1-slab.A4", "slab.A1-slab.B4", "slab.A1-slab.B4"),
        inForce().stream().map(ReadingEntry::target).sorted().toList(),
        "what was measured before can be measured again, and the list goes on where it was");
    assertTrue(console.err().contains("no target 'slab.Z9' at this stage"), console.err());
  }

  @Test
  void aFaceIsGoneToByItsNumber() throws IOException {
    measureStage("lift", "go column.A3/across 2\n0.1 deg\nquit\n");
    assertEquals("column.A3/across", inForce().get(0).target());
    assertEquals(2, inForce().get(0).face());
    assertReplays("lift");
  }

  @Test
  void questionsOfTheStageAreAskedAndAnsweredWithYesOrNo() throws IOException {
    measureStage("curing", "go edge-sound\n18.0\nn\ngo edge-sound\nYes\nquit\n");
    assertTrue(
        console.err().contains("Answer edge-sound: Is the edge sound?  Type yes or no."),
        console.err());
    assertTrue(
        console.err().contains("The answer to a question is '18.0'; expected yes or no."),
        console.err());
    assertEquals(List.of("no", "yes"), inForce().stream().map(ReadingEntry::value).toList());
    assertEquals(List.of(0.0, 1.0), inForce().stream().map(ReadingEntry::siValue).toList());
    assertEquals("attribute", inForce().get(0).quantity());
    assertReplays("curing");
  }

  @Test
  void aTypedSessionReplaysToTheSameReadings() throws IOException {
    measure(
        "18003\nundo\n17.9\nagain\n18.004 m\nskip\nback\n20.126\n21.13\nyes\nquit\n",
        "--round",
        "3");
    Path capture = assertReplays("arrival");
    assertTrue(
        inForce().get(0).source().matches("measure " + capture.toFile().getName() + " line \\d+"),
        inForce().get(0).source());
  }

  private Path assertReplays(String stage) throws IOException {
    Path capture;
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      capture = files.findFirst().orElseThrow();
    }
    TestConsole other = SiteFolder.withJob(Files.createDirectory(folder.resolve("other"))).console;
    assertEquals(
        0, other.run("replay", "larkrise-01", "--stage", stage, capture.toString()), other.err());
    assertEquals(essence(log(console)), essence(log(other)));
    return capture;
  }

  private static List<String> essence(JobLog log) {
    return log.readings().stream()
        .map(row -> row.entry())
        .map(
            reading ->
                String.join(
                    " ",
                    reading.target(),
                    reading.value(),
                    reading.unit(),
                    "" + reading.face(),
                    "" + reading.round(),
                    reading.link(),
                    "" + log.voidedIds().contains(reading.id())))
        .toList();
  }
}
