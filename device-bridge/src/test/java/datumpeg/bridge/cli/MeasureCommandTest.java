package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.MeasuredQuantity;
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
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
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
  private SerialSite site;

  @BeforeEach
  void open() throws IOException {
    site = new SerialSite(folder);
  }

  @AfterEach
  void close() throws IOException {
    site.close();
  }

  @Test
  void readingsTakeTheTargetsInOrderAndAPulledCableLosesNoneOfThem() throws Exception {
    CompletableFuture<Integer> ended = site.measuring();
    EmulatedMeter meter = new EmulatedMeter(Dialect.METRES, Chatter.SILENT, 1);
    site.meterSends(new String(meter.send(18.0035).toArray(), StandardCharsets.UTF_8));
    site.untilRecorded(1);
    site.measured("BATT 87%\r\n-0.35 deg\r\n20.1");
    site.meterSends("26 m\r\n");
    site.untilRecorded(2);
    site.meterSends("9.00");
    site.master().close();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS));

    assertTrue(site.console.err().contains("meter was lost"), site.console.err());
    assertTrue(site.console.err().contains("put aside: not a reading"), site.console.err());
    assertTrue(
        site.console.err().contains("-0.35 deg is not the kind of value"), site.console.err());
    assertTrue(site.console.out().contains("Recorded 2 reading(s)"), site.console.out());
    List<ReadingEntry> stored = site.log().readings().stream().map(row -> row.entry()).toList();
    assertEquals(2, stored.size());
    assertEquals(
        site.list().subList(0, 2).stream().map(Target::text).toList(),
        stored.stream().map(ReadingEntry::target).toList());
    assertEquals("18.0035", stored.get(0).value());
    assertEquals("m", stored.get(0).unit());
    assertEquals(20.126, stored.get(1).siValue(), 1e-12);
    assertEquals("laser", stored.get(0).meter());
    assertEquals("Ines", stored.get(0).operator());
    assertEquals("serial:" + folder.resolve("meter"), stored.get(0).link());
    assertEquals(
        "32302e313236206d", stored.get(1).raw().substring(0, 16), "the bytes as they came");
    assertEquals(0, site.console.run("verify"), site.console.err());
  }

  @Test
  void theCaptureOfASessionReplaysToTheSameReadings() throws Exception {
    CompletableFuture<Integer> ended = site.measuring();
    site.meterSends("18.0035 m\r\n");
    site.untilRecorded(1);
    site.measured("20.126 m\r\nLaser on\r\n");
    site.untilRecorded(2);
    site.master().close();
    ended.get(60, TimeUnit.SECONDS);
    JobLog log = site.log();
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
    assertEquals(essence(log), essence(SerialSite.log(elsewhere)));
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
    assertEquals(0, site.console.run("job", "add", "bare.toml"), site.console.err());
    String[] words = {
      "measure",
      "larkrise-01",
      "--stage",
      "lift",
      "--link",
      "serial:" + site.master().getSlaveName(),
      "--meter",
      "shed-tilt",
      "--wait",
      "0"
    };
    CompletableFuture<Integer> ended =
        site.console.begin(
            new ByteArrayInputStream("\nskip\n".getBytes(StandardCharsets.UTF_8)), words);
    byte[] command = new byte[2];
    assertEquals(2, site.master().getInputStream().readNBytes(command, 0, 2));
    assertEquals("M\r", new String(command, StandardCharsets.US_ASCII));
    site.meterSends("-0.30\r\n");
    site.untilRecorded(1);
    site.master().close();
    ended.get(60, TimeUnit.SECONDS);

    JobLog log = site.log();
    ReadingEntry reading = log.readings().get(0).entry();
    assertEquals("0.30", reading.value());
    assertEquals(Math.toRadians(0.30), reading.siValue(), 1e-12);
    assertEquals("shed-tilt", reading.meter());
    assertEquals("shed-tilt", log.profiles().get(0).entry().id());
    assertEquals(0, site.console.run("verify"), site.console.out() + site.console.err());
    Files.delete(folder.resolve("meters/shed-tilt.toml"));
    assertEquals(0, site.console.run("reduce", "larkrise-01"), site.console.err());
    assertFalse(site.console.out().contains("not described in the job"), site.console.out());
    try (SiteRecord record =
        SqliteRecords.open(site.console.recordFile(), SqliteRecords.Mode.READ)) {
      Meter meter =
          StoredJob.load(record, "larkrise-01")
              .jobAsMeasured()
              .meter("shed-tilt", MeasuredQuantity.TILT);
      assertEquals("meter profile shed-tilt", meter.stated());
      assertEquals(Math.toRadians(0.03), meter.accuracy().common(), 1e-12);
    }
  }

  @Test
  void aPersonTypesSkipsGoesBackAndUndoes() {
    int status =
        site.console.runWithInput(
            "18.003\nundo\n18.004 m\nskip\nback\nnonsense\n20,125 m\nquit\n",
            "measure",
            "larkrise-01",
            "--stage",
            "arrival");
    assertEquals(0, status, site.console.err());
    JobLog log = site.log();
    assertEquals(3, log.readings().size());
    assertEquals(1, log.voids().size());
    assertEquals("18.003", log.readings().get(0).entry().value());
    assertEquals(log.readings().get(0).entry().id(), log.voids().get(0).entry().readingId());
    List<ReadingEntry> inForce = log.inForce().stream().map(row -> row.entry()).toList();
    assertEquals(18.004, inForce.get(0).siValue(), 1e-12);
    assertEquals(site.list().get(1).text(), inForce.get(1).target());
    assertEquals(20.125, inForce.get(1).siValue(), 1e-12);
    assertTrue(
        site.console.err().contains("Or type skip, back, undo, go TARGET or quit."),
        site.console.err());
  }

  @Test
  void aPortThatIsMissingIsSaidBeforeAnythingIsMeasured() {
    int status =
        site.console.run(
            "measure", "larkrise-01", "--stage", "arrival", "--link", "serial:/dev/ttyNoSuch7");
    assertEquals(3, status);
    assertTrue(site.console.err().contains("/dev/ttyNoSuch7"), site.console.err());
    assertEquals(0, site.log().readings().size());
  }

  @Test
  void aPortThatIsTakenIsSaid() throws Exception {
    CompletableFuture<Integer> first = site.measuring();
    TestConsole second = SiteFolder.withJob(Files.createDirectory(folder.resolve("b"))).console;
    int status =
        second.run(
            "measure",
            "larkrise-01",
            "--stage",
            "arrival",
            "--link",
            "serial:" + site.master().getSlaveName());
    assertEquals(3, status, second.err());
    assertTrue(second.err().contains(site.master().getSlaveName()), second.err());
    site.master().close();
    first.get(60, TimeUnit.SECONDS);
  }

  @Test
  void wrongWordsAreRefused() {
    assertEquals(2, site.console.run("measure", "larkrise-01", "--stage", "arival"));
    assertTrue(site.console.err().contains("arrival"), site.console.err());
    assertEquals(
        2,
        site.console.run(
            "measure", "larkrise-01", "--stage", "arrival", "--link", "replay:x.jsonl"));
    assertTrue(site.console.err().contains("use 'replay"), site.console.err());
    assertEquals(
        2,
        site.console.run(
            "measure", "larkrise-01", "--stage", "arrival", "--link", "cereal:/dev/x"));
    assertTrue(site.console.err().contains("serial"), site.console.err());
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
}
