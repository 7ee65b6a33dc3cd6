package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.modbus.FakeStation;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A Modbus station whose profile asks for its value every so often, while measuring. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class ModbusMeasuringTest {
  /** Two input registers from 0 of station 1, answered with 12.003 as float32. */
  private static final String QUESTION = "01040000000271cb";

  private static final String ANSWER = "01040441400c4a6a9b";
  private static final String PROFILE =
      """
      id = "pier"

      [modbus-register]
      station = 1
      table = "input"
      first = 0
      every_ms = 100
      word_order = "abcd"
      format = "float32"
      unit = "m"
      """;

  @TempDir Path folder;
  private FakeStation station;
  private TestConsole console;
  private final PipedOutputStream keyboard = new PipedOutputStream();

  @BeforeEach
  void open() throws IOException {
    station = new FakeStation().answers(QUESTION, ANSWER);
    console = SiteFolder.withJob(folder).console;
    Files.writeString(
        Files.createDirectory(folder.resolve("meters")).resolve("pier.toml"), PROFILE);
  }

  @AfterEach
  void close() throws IOException {
    station.close();
  }

  private CompletableFuture<Integer> running(String shown, String... words) throws IOException {
    PipedInputStream in = new PipedInputStream(keyboard);
    CompletableFuture<Integer> ended = console.begin(in, words);
    until(shown, () -> console.err().contains(shown) || ended.isDone());
    return ended;
  }

  private void type(String line) throws IOException {
    keyboard.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    keyboard.flush();
  }

  private void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(System.nanoTime() < deadline, "no " + what + ": " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
  }

  private List<String> values() {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01")).inForce().stream()
          .map(row -> row.entry().target() + " " + row.entry().siValue())
          .toList();
    }
  }

  @Test
  void guidedMeasuringAsksOnlyWhenThePersonSaysSo() throws Exception {
    CompletableFuture<Integer> ended =
        running(
            "Measure from",
            "measure",
            "larkrise-01",
            "--stage",
            "arrival",
            "--link",
            "serial:" + station.port(),
            "--meter",
            "pier");
    LockSupport.parkNanos(1_000_000_000L);
    assertEquals(0, station.questionCount(), "a value aimed at nothing was asked for");
    type("");
    until("value", () -> console.err().contains("HELD: 12.00"));
    type("yes");
    until("reading", () -> console.err().contains("recorded 12.00"));
    type("quit");
    assertEquals(0, ended.get(60, TimeUnit.SECONDS), console.err());
    // One the machine took a second over is asked once more, and has one answer all the same.
    assertEquals(1, console.err().split("HELD: ", -1).length - 1, console.err());
    assertEquals(1, values().size());
    assertTrue(values().get(0).startsWith("slab.A1-slab.A4 12.00"), values().toString());
  }

  @Test
  void aStationThatDoesNotAnswerWhenToldToIsSaid() throws Exception {
    station.answers(QUESTION, "01040441400c4a6a9c"); // its check sum is wrong: as good as none
    CompletableFuture<Integer> ended =
        running(
            "Measure from",
            "measure",
            "larkrise-01",
            "--stage",
            "arrival",
            "--link",
            "serial:" + station.port(),
            "--meter",
            "pier");
    type("");
    until("sentence", () -> console.err().contains("did not answer 3 times"));
    type("quit");
    assertEquals(0, ended.get(60, TimeUnit.SECONDS), console.err());
  }

  @Test
  void watchingAsksAsOftenAsTheProfileSaysAndKeepsTheOneConfirmed() throws Exception {
    CompletableFuture<Integer> ended =
        running(
            "Watching",
            "watch",
            "larkrise-01",
            "slab.A1-slab.A4",
            "--stage",
            "arrival",
            "--link",
            "serial:" + station.port(),
            "--meter",
            "pier");
    until("several values", () -> station.questionCount() > 5);
    type("keep");
    assertEquals(0, ended.get(60, TimeUnit.SECONDS), console.err());
    assertEquals(1, values().size());
  }
}
