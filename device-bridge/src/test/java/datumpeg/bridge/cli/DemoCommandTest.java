package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonText;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DemoCommandTest {
  private static final Path HOME = Path.of(System.getProperty("datumpeg.root"));

  @TempDir private Path folder;

  private TestConsole demo(Path home) {
    return new TestConsole(
        folder, program -> List.of(new DemoCommand(program, List.of(home), folder)));
  }

  /** The whole path: steps, record, reduction; held against what was planted. */
  @ParameterizedTest
  @ValueSource(strings = {"larkrise-01", "quarrybend-02"})
  void whatIsFoundIsWhatWasPlanted(String job) throws IOException {
    DemoSample sample =
        DemoSample.all(List.of(HOME)).stream()
            .filter(candidate -> candidate.job().equals(job))
            .findFirst()
            .orElseThrow();
    DemoRun.Found found = new DemoRun(console(), folder.resolve("demo.db")).of(sample);
    Set<String> rows = new TreeSet<>();
    found.findings().stages().forEach(stage -> rows.addAll(rows(stage, found)));
    List<String> lines = Files.readAllLines(sample.folder().resolve("expected-findings.csv"));
    assertEquals("stage,check,target,verdict,note", lines.get(0));
    assertEquals(new TreeSet<>(lines.subList(1, lines.size())), rows);
    assertEquals(List.of(), found.stored().strays());
  }

  private static Set<String> rows(StageFindings stage, DemoRun.Found found) {
    Set<String> rows = new TreeSet<>();
    stage.outcomes().stream()
        .filter(outcome -> outcome.is(Verdict.NONCONFORMING) || outcome.is(Verdict.UNDECIDED))
        .forEach(outcome -> rows.add(row(stage, outcome)));
    stage.notes().stream()
        .filter(note -> note.kind() == Note.Kind.SLIP_SUSPECTED)
        .flatMap(note -> note.readingIds().stream())
        .forEach(id -> rows.add(stage.stage() + ",," + target(found, id) + ",,slip-suspected"));
    return rows;
  }

  private static String row(StageFindings stage, Outcome outcome) {
    return String.join(
        ",",
        stage.stage(),
        outcome.check(),
        outcome.target(),
        outcome.verdict().orElseThrow().text(),
        outcome.stale() ? "stale" : "");
  }

  private static String target(DemoRun.Found found, String id) {
    return found.stored().readings().stream()
        .filter(reading -> reading.id().equals(id))
        .map(Reading::target)
        .findFirst()
        .orElseThrow()
        .text();
  }

  private Console console() {
    return new Console(
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
        InputStream.nullInputStream(),
        Map.of("HOME", folder.toString(), "XDG_STATE_HOME", folder.resolve("state").toString()),
        Clock.fixed(TestConsole.NOW, ZoneOffset.UTC),
        folder);
  }

  @Test
  void itSaysThatItIsInventedWhatIsWrongAndEndsWithTwoCommands() {
    TestConsole console = demo(HOME);
    assertEquals(0, console.run("demo"), console.err());
    List<String> lines = console.out().lines().toList();
    assertTrue(lines.get(0).startsWith("Two invented jobs"), lines.get(0));
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("    X Column A3 leans ")));
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("    ? Column B2 leans ")));
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("    ! ")));
    assertTrue(lines.stream().anyMatch(line -> line.startsWith("    o Put right: ")));
    Path record = folder.resolve("datumpeg-demo-1").resolve("demo.db");
    assertEquals(
        List.of(
            "Try next:",
            "  ./datumpeg report larkrise-01 --record " + record + " -o job.html",
            "  ./datumpeg desktop --record " + record),
        lines.subList(lines.size() - 3, lines.size()));
    assertTrue(Files.exists(record));
  }

  @Test
  void itIsAboutOnePageOfPlainText() {
    TestConsole console = demo(HOME);
    console.run("demo");
    List<String> lines = console.out().lines().toList();
    assertTrue(lines.size() <= 48, lines.size() + " lines");
    lines
        .subList(0, lines.size() - 2) // the commands are as long as the record's name makes them
        .forEach(line -> assertTrue(line.length() <= 80, line));
    assertEquals(-1, console.out().indexOf('\u001b'));
  }

  @Test
  void asJsonItIsOneDocumentWithTheFindingsOfBothJobs() {
    TestConsole console = demo(HOME);
    assertEquals(0, console.run("demo", "--json"), console.err());
    JsonObject answer = JsonReader.readObject(console.out(), "the answer of demo");
    assertTrue(answer.truth("invented"));
    assertEquals(
        List.of("larkrise-01", "quarrybend-02"),
        answer.array("jobs").stream().map(job -> ((JsonObject) job).text("job")).toList());
    assertEquals(2, answer.array("next").size());
    assertTrue(((JsonText) answer.array("next").get(1)).value().contains(" desktop "));
  }

  @Test
  void aSecondDemoHasARecordOfItsOwn() {
    TestConsole console = demo(HOME);
    assertEquals(0, console.run("demo"), console.err());
    assertEquals(0, console.run("demo"), console.err());
    assertTrue(Files.exists(folder.resolve("datumpeg-demo-2").resolve("demo.db")));
  }

  @Test
  void withoutSampleReadingsItSaysWhereItLooked() {
    TestConsole console = demo(folder);
    assertEquals(2, console.run("demo"));
    assertEquals(
        "The demo needs the folder sample-readings, which was not found in, or above, "
            + folder
            + ".\n",
        console.err());
  }

  @Test
  void theSamplesAreFoundFromAFolderBelowThem() throws IOException {
    Path below = Files.createDirectories(folder.resolve("a").resolve("b"));
    Path sample = Files.createDirectories(folder.resolve("sample-readings").resolve("job-1"));
    Files.writeString(sample.resolve("steps.txt"), "job add job.toml\n");
    assertEquals(
        List.of(new DemoSample(sample, List.of(List.of("job", "add", "job.toml")))),
        DemoSample.all(List.of(below)));
  }

  /** As it is called from any folder: the program finds what it was delivered with. */
  @Test
  void theSamplesAreFoundFromAnyFolder() {
    assertEquals(2, DemoSample.all(DemoCommand.places(folder)).size());
  }

  @Test
  void aFolderWithoutJobsIsRefused() throws IOException {
    Files.createDirectories(folder.resolve("sample-readings").resolve("empty"));
    TestConsole console = demo(folder);
    assertEquals(2, console.run("demo"));
    assertTrue(console.err().contains("holds no sample job"), console.err());
  }

  @Test
  void aStepThatFailsIsNamedWithItsReason() throws IOException {
    Path sample = Files.createDirectories(folder.resolve("sample-readings").resolve("job-1"));
    Files.writeString(sample.resolve("steps.txt"), "job add job.toml\n");
    TestConsole console = demo(folder);
    assertEquals(2, console.run("demo"));
    assertTrue(
        console.err().startsWith("The demo stopped at 'job add job.toml' in " + sample + ": "),
        console.err());
  }

  @Test
  void stepsLeaveOutCommentsAndKeepQuotedWordsTogether() {
    assertEquals(
        List.of(List.of("moved", "j", "column.A3", "--why", "prop let out")),
        DemoSample.steps(
            List.of("# what they did", "", " moved j column.A3 --why \"prop let out\" ")));
  }
}
