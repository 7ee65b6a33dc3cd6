package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.emulate.Dialect;
import datumpeg.bridge.emulate.EmulatedMeter;
import datumpeg.bridge.emulate.EmulatedMeter.Chatter;
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
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.CompletableFuture;
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

/** Measuring over a real pseudo-terminal: the test is the meter and the cable. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class MeasureCommandTest {
  @TempDir Path folder;
  private TestConsole console;
  private Pty master;
  private long sentNanos = System.nanoTime();

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withJob(folder).console;
    master = new Pty();
  }

  @AfterEach
  void close() throws IOException {
    if (!master.isClosed()) {
      master.close();
    }
  }

  private CompletableFuture<Integer> measuring(String... more) {
    String[] words =
        Stream.concat(
                Stream.of(
                    "measure",
                    "larkrise-01",
                    "--stage",
                    "arrival",
                    "--by",
                    "Ines",
                    "--link",
                    "serial:" + port()),
                more.length == 0 ? Stream.of("--wait", "0") : Stream.of(more))
            .toArray(String[]::new);
    CompletableFuture<Integer> ended = CompletableFuture.supplyAsync(() -> console.run(words));
    until(
        "a target is asked for",
        () -> console.err().contains("Measure distance") || ended.isDone());
    return ended;
  }

  /** As udev names a port: by a link that stays the same, whichever number the port has. */
  private Path port() {
    Path port = folder.resolve("meter");
    try {
      Path beside = Files.createSymbolicLink(folder.resolve("beside"), slave());
      return Files.move(beside, port, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private Path slave() {
    return Path.of(master.getSlaveName());
  }

  /** The name goes first: the number may be given to somebody else's port at once. */
  private void pull() throws IOException {
    Files.delete(folder.resolve("meter"));
    master.close();
  }

  private void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!happened.getAsBoolean()) {
      assertTrue(
          System.nanoTime() < deadline, "waited too long until " + what + ": " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
  }

  /** No sooner behind what was sent before than a person measures two targets. */
  private void measured(String text) throws IOException {
    LockSupport.parkNanos(sentNanos + 1_100_000_000L - System.nanoTime());
    meterSends(text);
  }

  private void meterSends(String text) throws IOException {
    sentNanos = System.nanoTime();
    master.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    master.getOutputStream().flush();
  }

  private void untilRecorded(int count) {
    until(
        count + " readings are recorded",
        () -> console.err().split("\n  recorded ", -1).length - 1 == count);
  }

  private JobLog log(Path record) {
    try (SiteRecord opened = SqliteRecords.open(record, SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01"));
    }
  }

  private List<Target> list() {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      StoredJob job = StoredJob.load(opened, "larkrise-01");
      return MeasuringList.of(job.job().setOut(), job.job().stage("arrival").orElseThrow())
          .targets();
    }
  }

  @Test
  void readingsTakeTheTargetsInOrderAndAPulledCableLosesNoneOfThem() throws Exception {
    CompletableFuture<Integer> ended = measuring();
    EmulatedMeter meter = new EmulatedMeter(Dialect.METRES, Chatter.SILENT, 1);
    meterSends(new String(meter.send(18.0035).toArray(), StandardCharsets.UTF_8));
    untilRecorded(1);
    measured("BATT 87%\r\n-0.35 deg\r\n20.1");
    meterSends("26 m\r\n");
    untilRecorded(2);
    meterSends("9.00");
    master.close();
    assertEquals(3, ended.get(30, TimeUnit.SECONDS));

    assertTrue(console.err().contains("meter was lost"), console.err());
    assertTrue(console.err().contains("put aside: not a reading"), console.err());
    assertTrue(console.err().contains("-0.35 deg is not the kind of value"), console.err());
    assertTrue(console.out().contains("Recorded 2 reading(s)"), console.out());
    List<ReadingEntry> stored =
        log(console.recordFile()).readings().stream().map(row -> row.entry()).toList();
    assertEquals(2, stored.size());
    assertEquals(
        list().subList(0, 2).stream().map(Target::text).toList(),
        stored.stream().map(ReadingEntry::target).toList());
    assertEquals("18.0035", stored.get(0).value());
    assertEquals("m", stored.get(0).unit());
    assertEquals(20.126, stored.get(1).siValue(), 1e-12);
    assertEquals("laser", stored.get(0).meter());
    assertEquals("Ines", stored.get(0).operator());
    assertEquals("serial:" + folder.resolve("meter"), stored.get(0).link());
    assertEquals(
        "32302e313236206d", stored.get(1).raw().substring(0, 16), "the bytes as they came");
    assertEquals(0, console.run("verify"), console.err());
  }

  @Test
  void theCaptureOfASessionReplaysToTheSameReadings() throws Exception {
    CompletableFuture<Integer> ended = measuring();
    meterSends("18.0035 m\r\n");
    untilRecorded(1);
    measured("20.126 m\r\nLaser on\r\n");
    untilRecorded(2);
    master.close();
    ended.get(30, TimeUnit.SECONDS);
    JobLog log = log(console.recordFile());
    Path capture;
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      capture = files.findFirst().orElseThrow();
    }
    assertEquals(capture.toFile().getName(), log.captures().get(0).entry().name());

    Path other = Files.createDirectory(folder.resolve("other"));
    TestConsole elsewhere = SiteFolder.withJob(other).console;
    assertEquals(
        0,
        elsewhere.run("replay", "larkrise-01", "--stage", "arrival", capture.toString()),
        elsewhere.err());
    assertEquals(essence(log), essence(log(elsewhere.recordFile())));
  }

  @Test
  void aBurstIsHeldAndNeverSilentlyAssigned() throws Exception {
    CompletableFuture<Integer> ended = measuring();
    meterSends("18.003 m\r\n20.126 m\r\n9.001 m\r\n");
    until("the burst is held", () -> console.err().split("HELD: ", -1).length - 1 == 3);
    assertTrue(console.err().contains("came in one burst"), console.err());
    measured("18.004 m\r\n");
    untilRecorded(1);
    master.close();
    ended.get(30, TimeUnit.SECONDS);
    List<ReadingEntry> stored =
        log(console.recordFile()).readings().stream().map(row -> row.entry()).toList();
    assertEquals(List.of("18.004"), stored.stream().map(ReadingEntry::value).toList());
  }

  @Test
  void aProfileDescribesTheMeterTheJobDoesNot() throws Exception {
    Files.createDirectories(folder.resolve("meters"));
    Files.writeString(
        folder.resolve("meters/shed-tilt.toml"),
        """
        id = "shed-tilt"
        sign = "reversed"
        trigger = "M\\r"
        [text-line]
        unit = "deg"
        [accuracy]
        quantity = "tilt"
        repeatability = "0.02 deg"
        common = "0.03 deg"
        """);
    Files.writeString(
        folder.resolve("bare.toml"),
        JobTexts.LARKRISE.replaceAll("(?s)\\[meters.spirit\\].*?\n\n", ""));
    assertEquals(0, console.run("job", "add", "bare.toml"), console.err());
    String[] words = {
      "measure",
      "larkrise-01",
      "--stage",
      "lift",
      "--link",
      "serial:" + master.getSlaveName(),
      "--meter",
      "shed-tilt",
      "--wait",
      "0"
    };
    CompletableFuture<Integer> ended =
        CompletableFuture.supplyAsync(() -> console.runWithInput("\nskip\n", words));
    byte[] command = new byte[2];
    assertEquals(2, master.getInputStream().readNBytes(command, 0, 2));
    assertEquals("M\r", new String(command, StandardCharsets.US_ASCII));
    meterSends("-0.30\r\n");
    untilRecorded(1);
    master.close();
    ended.get(30, TimeUnit.SECONDS);

    JobLog log = log(console.recordFile());
    ReadingEntry reading = log.readings().get(0).entry();
    assertEquals("0.30", reading.value());
    assertEquals(Math.toRadians(0.30), reading.siValue(), 1e-12);
    assertEquals("shed-tilt", reading.meter());
    assertEquals("shed-tilt", log.profiles().get(0).entry().id());
    assertEquals(0, console.run("verify"), console.out() + console.err());
    Files.delete(folder.resolve("meters/shed-tilt.toml"));
    assertEquals(0, console.run("reduce", "larkrise-01"), console.err());
    assertFalse(console.out().contains("not described in the job"), console.out());
    try (SiteRecord record = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      Meter meter =
          StoredJob.load(record, "larkrise-01")
              .jobAsMeasured()
              .meter("shed-tilt", MeasuredQuantity.TILT);
      assertEquals("meter profile shed-tilt", meter.stated());
      assertEquals(Math.toRadians(0.03), meter.accuracy().common(), 1e-12);
    }
  }

  private static List<String> essence(JobLog log) {
    return log.readings().stream()
        .map(row -> row.entry())
        .map(
            reading ->
                String.join(
                    " ",
                    reading.stage(),
                    reading.quantity(),
                    reading.target(),
                    reading.value(),
                    reading.unit(),
                    "" + reading.face(),
                    "" + reading.round(),
                    reading.meter(),
                    reading.raw(),
                    reading.link()))
        .toList();
  }

  @Test
  void aPersonTypesSkipsGoesBackAndUndoes() {
    int status =
        console.runWithInput(
            "18.003\nundo\n18.004 m\nskip\nback\nnonsense\n20,125 m\nquit\n",
            "measure",
            "larkrise-01",
            "--stage",
            "arrival");
    assertEquals(0, status, console.err());
    JobLog log = log(console.recordFile());
    assertEquals(3, log.readings().size());
    assertEquals(1, log.voids().size());
    assertEquals("18.003", log.readings().get(0).entry().value());
    assertEquals(log.readings().get(0).entry().id(), log.voids().get(0).entry().readingId());
    List<ReadingEntry> inForce = log.inForce().stream().map(row -> row.entry()).toList();
    assertEquals(18.004, inForce.get(0).siValue(), 1e-12);
    assertEquals(list().get(1).text(), inForce.get(1).target());
    assertEquals(20.125, inForce.get(1).siValue(), 1e-12);
    assertTrue(
        console.err().contains("Or type skip, back, undo, go TARGET or quit."), console.err());
  }

  @Test
  void aPortThatIsMissingIsSaidBeforeAnythingIsMeasured() {
    int status =
        console.run(
            "measure", "larkrise-01", "--stage", "arrival", "--link", "serial:/dev/ttyNoSuch7");
    assertEquals(3, status);
    assertTrue(console.err().contains("/dev/ttyNoSuch7"), console.err());
    assertEquals(0, log(console.recordFile()).readings().size());
  }

  @Test
  void aPortThatIsTakenIsSaid() throws Exception {
    CompletableFuture<Integer> first = measuring();
    TestConsole second = SiteFolder.withJob(Files.createDirectory(folder.resolve("b"))).console;
    int status =
        second.run(
            "measure",
            "larkrise-01",
            "--stage",
            "arrival",
            "--link",
            "serial:" + master.getSlaveName());
    assertEquals(3, status, second.err());
    assertTrue(second.err().contains(master.getSlaveName()), second.err());
    master.close();
    first.get(30, TimeUnit.SECONDS);
  }

  @Test
  void wrongWordsAreRefused() {
    assertEquals(2, console.run("measure", "larkrise-01", "--stage", "arival"));
    assertTrue(console.err().contains("arrival"), console.err());
    assertEquals(
        2, console.run("measure", "larkrise-01", "--stage", "arrival", "--link", "replay:x.jsonl"));
    assertTrue(console.err().contains("use 'replay"), console.err());
    assertEquals(
        2, console.run("measure", "larkrise-01", "--stage", "arrival", "--link", "cereal:/dev/x"));
    assertTrue(console.err().contains("serial"), console.err());
  }

  @Test
  void aPulledCableThatIsPutBackGoesOnWithTheSameTarget() throws Exception {
    CompletableFuture<Integer> ended = measuring("--wait", "10");
    meterSends("18.003 m\r\n20.1");
    untilRecorded(1);
    pull();
    until("the loss is said", () -> console.err().contains("opened again as soon as"));
    assertTrue(console.err().contains("4 byte(s) of an unfinished reading"), console.err());
    master = new Pty();
    port();
    until("the return is said", () -> console.err().contains("is there again"));
    sentNanos = System.nanoTime();
    measured("20.126 m\r\n");
    untilRecorded(2);
    assertFalse(ended.isDone());
    String second = list().get(1).text();
    assertEquals(second, log(console.recordFile()).readings().get(1).entry().target());
    // What comes as the link comes back may be an old value.
    pull();
    until("the loss is said", () -> console.err().split("opened again as soon", -1).length == 3);
    master = new Pty();
    port();
    until("the return is said", () -> console.err().split("is there again", -1).length == 3);
    meterSends("9.002 m\r\n");
    until("it is held", () -> console.err().contains("as the link came back"));
    assertEquals(2, log(console.recordFile()).readings().size());
    pull();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), "it does not wait for ever");
  }

  @Test
  void aMeterThatSendsByItselfIsNotTakenForOneTargetAfterTheOther() throws Exception {
    CompletableFuture<Integer> ended = measuring();
    meterSends("18.003 m\r\n");
    untilRecorded(1);
    for (int i = 0; i < 3; i++) {
      LockSupport.parkNanos(300_000_000L);
      meterSends("18.003 m\r\n");
      int held = i + 1;
      until("it is held", () -> console.err().split("HELD: ", -1).length - 1 == held);
    }
    assertTrue(console.err().contains("within a second of another"), console.err());
    master.close();
    ended.get(30, TimeUnit.SECONDS);
    JobLog log = log(console.recordFile());
    assertEquals(1, log.readings().size());
    assertEquals(0, log.inForce().size(), "the first of the burst is withdrawn");
    assertEquals(0, console.run("verify"), console.err());
  }
}
