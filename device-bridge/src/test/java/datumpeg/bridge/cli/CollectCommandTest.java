package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program as a process of its own, which signals can reach. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no signals and pseudo-terminals")
class CollectCommandTest {
  /** Of the invented sample job, with a slab of which no two sides are alike. */
  static final String JOB =
      JobTexts.LARKRISE.replace("B4 = [\"18 m\",\"9 m\"]", "B4 = [\"19 m\",\"10 m\"]");

  private static final Path ENV = Path.of("/usr/bin/env");

  @TempDir Path folder;
  private TestConsole console;
  private Pty master;
  private final List<Process> started = new ArrayList<>();

  @BeforeEach
  void open() throws IOException {
    SiteFolder site = new SiteFolder(folder);
    site.write("shed.toml", JOB);
    console = site.console;
    assertEquals(0, console.run("job", "add", "shed.toml"), console.err());
    master = new Pty();
  }

  @AfterEach
  void close() throws IOException {
    started.forEach(Process::destroyForcibly);
    if (!master.isClosed()) {
      master.close();
    }
  }

  private Process start(String... words) throws IOException {
    List<String> command = new ArrayList<>();
    if (OS.LINUX.isCurrentOs() && Files.isExecutable(ENV)) {
      // A shell that starts the build in the background has it ignore Ctrl-C, and so its children.
      command.addAll(List.of(ENV.toString(), "--default-signal=INT"));
    }
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-XX:TieredStopAtLevel=1");
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add(ProgramUnderKill.class.getName());
    command.addAll(List.of(words));
    command.addAll(List.of("--record", folder.resolve("record.db").toString()));
    Process process =
        OwnHome.process(folder, command)
            .redirectOutput(folder.resolve("out.txt").toFile())
            .redirectError(folder.resolve("said.txt").toFile())
            .start();
    started.add(process);
    return process;
  }

  private String said() {
    return text("said.txt");
  }

  private String text(String name) {
    try {
      return WrittenMeanwhile.text(folder.resolve(name));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** As udev names a port: by a link that stays the same, whichever number the port has. */
  private Path port() throws IOException {
    Path port = folder.resolve("meter");
    Files.deleteIfExists(port);
    return Files.createSymbolicLink(port, Path.of(master.getSlaveName()));
  }

  private void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(System.nanoTime() < deadline, "waited too long until " + what + ": " + said());
      LockSupport.parkNanos(10_000_000);
    }
  }

  /** As a person does, who walks to the next target: behind what came before, once it is there. */
  private void meterSends(String text) throws IOException {
    LockSupport.parkNanos(1_250_000_000L);
    master.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    master.getOutputStream().flush();
  }

  /** What has no target, in the newest session's table. */
  private void untilInTable(int count) {
    until(count + " wait in the table", () -> rowCount() == count);
  }

  private long rowCount() {
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      List<Path> tables =
          files.filter(file -> file.toString().endsWith(".unassigned.csv")).sorted().toList();
      return tables.isEmpty()
          ? 0
          : WrittenMeanwhile.text(tables.get(tables.size() - 1)).lines().count() - 1;
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private void untilRecorded(int count) {
    until(count + " are recorded", () -> log().readings().size() == count);
  }

  private JobLog log() {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01"));
    }
  }

  private Process collecting() throws IOException {
    Process process =
        start(
            "collect",
            "larkrise-01",
            "--stage",
            "arrival",
            "--by",
            "Ines",
            "--link",
            "serial:" + port());
    until("it has begun", () -> said().contains("is there") || !process.isAlive());
    return process;
  }

  private static int endedBySignal(Process process, String signal) throws Exception {
    assertEquals(0, new ProcessBuilder("kill", "-" + signal, "" + process.pid()).start().waitFor());
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it did not end");
    return process.exitValue();
  }

  private Path made(String ending) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      return files.filter(file -> file.toString().endsWith(ending)).findFirst().orElseThrow();
    }
  }

  @Test
  void whatHasOneTargetIsRecordedAndTheRestWaitsInATableForAPerson() throws Exception {
    Process process = collecting();
    meterSends("20.126 m\r\n"); // one diagonal; the other is 21.471 m
    untilRecorded(1);
    meterSends("20.125 m\r\n"); // it has a reading already
    untilInTable(1);
    meterSends("7.123 m\r\n"); // nothing is near
    untilInTable(2);
    meterSends("9.001 m\r\n21.470 m\r\n"); // a burst, of values that would have their targets
    untilInTable(4);
    assertEquals(143, endedBySignal(process, "TERM"), said());

    ReadingEntry reading = log().readings().get(0).entry();
    assertEquals("slab.A4-slab.B1", reading.target());
    assertEquals(20.126, reading.siValue(), 1e-12);
    assertEquals("Ines", reading.operator());
    assertTrue(text("out.txt").contains("Recorded 1 reading(s)"), text("out.txt"));
    assertTrue(text("out.txt").contains("4 value(s) have no target yet"), text("out.txt"));
    assertEquals(1, log().captures().size(), "the capture is named in the record");
    assertEquals(0, console.run("verify"), console.err());

    Path table = made(".unassigned.csv");
    List<String> rows = Files.readAllLines(table);
    assertEquals("stage,quantity,target,value,unit,at,operator,note", rows.get(0));
    assertEquals(5, rows.size());
    assertTrue(rows.get(1).startsWith("arrival,distance,,20.125,m,2"), rows.get(1));
    assertTrue(rows.get(1).contains("slab.A4-slab.B1 has a reading already"), rows.get(1));
    assertTrue(rows.get(3).contains("burst"), rows.get(3));

    // A person completes one row, deletes the others, and takes it in.
    Files.write(
        table,
        List.of(rows.get(0), rows.get(3).replace("distance,,", "distance,slab.A1-slab.B1,")));
    assertEquals(0, console.run("enter", "larkrise-01", table.toString()), console.err());
    ReadingEntry entered =
        log().readings().stream()
            .map(row -> row.entry())
            .filter(row -> row.target().equals("slab.A1-slab.B1"))
            .findFirst()
            .orElseThrow();
    assertEquals(9.001, entered.siValue(), 1e-12);
    assertTrue(entered.note().contains("received as '9.001 m'"), entered.note());

    // And the capture replays to what was recorded.
    Path other = Files.createDirectory(folder.resolve("other"));
    SiteFolder elsewhere = new SiteFolder(other);
    elsewhere.write("shed.toml", JOB);
    assertEquals(0, elsewhere.console.run("job", "add", "shed.toml"));
    String capture = made(".capture.jsonl").toString();
    assertEquals(
        0,
        elsewhere.console.run("replay", "larkrise-01", "--stage", "arrival", capture),
        elsewhere.console.err());
    assertTrue(elsewhere.console.out().contains("1 reading"), elsewhere.console.out());
  }

  @Test
  void aMeterThatIsAwayIsAwaitedAndOneThatReturnsGoesOn() throws Exception {
    Path port = folder.resolve("meter");
    Process process =
        start("collect", "larkrise-01", "--stage", "arrival", "--link", "serial:" + port);
    until("it says that the meter is away", () -> said().contains("There is no serial port"));
    port();
    until("the return is said", () -> said().contains("meter is there"));
    meterSends("20.126 m\r\n");
    untilRecorded(1);
    assertTrue(process.isAlive());
    assertEquals(130, endedBySignal(process, "INT"), said());
    assertTrue(text("out.txt").contains("Recorded 1 reading(s)"), text("out.txt"));
    assertFalse(said().contains("defect"), said());
  }

  @Test
  void aKilledCollectionKeepsWhatItRecordedAndTheNextGoesOn() throws Exception {
    Process process = collecting();
    meterSends("20.126 m\r\n");
    untilRecorded(1);
    meterSends("7.123 m\r\n");
    untilInTable(1);
    process.destroyForcibly().waitFor();
    assertEquals(2, Files.readAllLines(made(".unassigned.csv")).size());
    Process second = collecting();
    meterSends("21.470 m\r\n");
    untilRecorded(2);
    endedBySignal(second, "TERM");
    assertEquals(2, log().captures().size(), "also that of the killed one is named");
    assertEquals(0, console.run("verify"), console.err());
  }

  @Test
  void withoutALinkThereIsNothingToCollect() {
    assertEquals(2, console.run("collect", "larkrise-01", "--stage", "arrival"));
    assertTrue(console.err().contains("at least one --link"), console.err());
  }

  @Test
  void anInterruptedMeasurementLosesNothingAndGoesOnAtTheSameTarget() throws Exception {
    Process process =
        start("measure", "larkrise-01", "--stage", "arrival", "--link", "serial:" + port());
    until("a target is asked for", () -> said().contains("Measure from"));
    meterSends("18.003 m\r\n");
    until("the next is asked for", () -> said().split("Measure ", -1).length == 3);
    String asked = said().substring(said().lastIndexOf("Measure ")).split(",", -1)[0];
    assertEquals(130, endedBySignal(process, "INT"), said());
    assertEquals(1, log().readings().size());
    assertEquals(0, console.runWithInput("quit\n", "measure", "larkrise-01", "--stage", "arrival"));
    assertTrue(console.err().contains("1 of "), console.err());
    assertTrue(console.err().contains(asked + ","), console.err());
    assertEquals(0, console.run("verify"), console.err());
  }
}
