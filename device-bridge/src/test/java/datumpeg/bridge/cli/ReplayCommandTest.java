package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.emulate.CaptureComposer;
import datumpeg.bridge.emulate.Dialect;
import datumpeg.bridge.emulate.EmulatedMeter.Chatter;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplayCommandTest {
  private static final Instant AT = Instant.parse("2026-03-02T08:00:00Z");

  @TempDir Path folder;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withJob(folder).console;
  }

  private static CaptureComposer laser() {
    return new CaptureComposer("larkrise-01", "arrival", 7)
        .meter("L1", "serial:/dev/ttyUSB0", "laser", Dialect.MILLIMETRES, Chatter.SILENT)
        .keyboard("K");
  }

  private static CaptureComposer twoDistances() {
    return laser()
        .reading("L1", "slab.A1-slab.A4", null, 18.0035, AT)
        .reading("L1", "slab.B4-slab.A1", null, 20.1262, AT.plusSeconds(30));
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  private static String text(CaptureComposer composer) {
    return new String(composer.compose().toArray(), StandardCharsets.UTF_8);
  }

  private int replay(String name, String... more) {
    String[] words = new String[5 + more.length];
    System.arraycopy(
        new String[] {"replay", "larkrise-01", "--stage", "arrival", name}, 0, words, 0, 5);
    System.arraycopy(more, 0, words, 5, more.length);
    return console.run(words);
  }

  private JobLog log() {
    try (SiteRecord record = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return record.log(StoredJob.find(record, "larkrise-01"));
    }
  }

  @Test
  void guidedCaptureGoesToTheTargetsThePersonAskedFor() throws IOException {
    write("a.jsonl", text(twoDistances()));
    assertEquals(0, replay("a.jsonl"), console.err());
    assertEquals(
        List.of("slab.A1-slab.A4 18003.5 mm laser", "slab.A1-slab.B4 20126.2 mm laser"),
        log().readings().stream()
            .map(row -> row.entry())
            .map(r -> r.target() + " " + r.value() + " " + r.unit() + " " + r.meter())
            .toList());
    assertEquals("a.jsonl", log().captures().get(0).entry().name());
  }

  @Test
  void withoutActsTheTargetsAreTakenInTheOrderOfTheList() throws IOException {
    String bytesOnly =
        text(twoDistances())
            .lines()
            .filter(line -> !line.contains("\"act\""))
            .collect(Collectors.joining("\n", "", "\n"));
    write("b.jsonl", renumbered(bytesOnly));
    assertEquals(0, replay("b.jsonl"), console.err());
    assertEquals(2, log().readings().size());
    assertFalse(
        log().readings().get(0).entry().target().equals(log().readings().get(1).entry().target()));
  }

  private static String renumbered(String capture) {
    int[] number = {0};
    return capture
        .lines()
        .map(line -> line.replaceFirst("\"n\":\\d+", "\"n\":" + number[0]++))
        .collect(Collectors.joining("\n", "", "\n"));
  }

  @Test
  void heldIsPutAsideUndoneIsWithdrawnTypedIsTaken() throws IOException {
    write(
        "c.jsonl",
        text(
            twoDistances()
                .act(Kind.UNDO, null, null, null, AT.plusSeconds(60))
                .act(Kind.TYPED, null, null, "20.127 m", AT.plusSeconds(70))
                .act(Kind.HELD, null, null, null, AT.plusSeconds(71))
                .act(Kind.TYPED, null, null, "20.128 m", AT.plusSeconds(80))
                .act(Kind.ACCEPT, null, null, null, AT.plusSeconds(81))));
    assertEquals(0, replay("c.jsonl"), console.err());
    assertTrue(console.out().contains("Put aside: 1; withdrawn again: 1"), console.out());
    assertEquals(
        List.of("18003.5", "20.128 m"),
        log().inForce().stream().map(row -> row.entry().value()).toList());
  }

  @Test
  void tornLastLineIsLeftOutAndSaid() throws IOException {
    String whole = text(twoDistances());
    write("torn.jsonl", whole + "{\"n\":99,\"t\":\"2026-03-0");
    assertEquals(0, replay("torn.jsonl"), console.err());
    long line = whole.lines().count() + 1;
    assertTrue(console.out().contains("Line " + line + ", the last, is cut short"), console.out());
    assertEquals(2, log().readings().size());
  }

  @Test
  void damageInTheMiddleIsNamedAndNothingIsStored() throws IOException {
    List<String> lines = text(twoDistances()).lines().collect(Collectors.toList());
    lines.set(5, "{\"n\":5,\"t\":\"yesterday\"}");
    write("bad.jsonl", String.join("\n", lines) + "\n");
    assertEquals(2, replay("bad.jsonl"));
    assertTrue(console.err().contains("bad.jsonl") && console.err().contains("6"), console.err());
    assertEquals(0, log().readings().size());
  }

  @Test
  void sameCaptureTwiceIsRefusedUnlessAgain() throws IOException {
    write("a.jsonl", text(twoDistances()));
    assertEquals(0, replay("a.jsonl"));
    assertEquals(2, replay("a.jsonl"));
    assertTrue(console.err().contains("--again"), console.err());
    assertEquals(2, log().readings().size());
    assertEquals(0, replay("a.jsonl", "--again"), console.err());
    assertEquals(4, log().readings().size());
  }

  @Test
  void targetThePlanDoesNotHaveIsNamedWithItsLine() throws IOException {
    write("far.jsonl", text(laser().reading("L1", "slab.A1-slab.A9", null, 18, AT)));
    assertEquals(2, replay("far.jsonl"));
    assertTrue(console.err().contains("line 2"), console.err());
    assertTrue(console.err().contains("slab.A9") || console.err().contains("A9"), console.err());
  }

  @Test
  void captureOfAProfileThisProgramDoesNotHaveIsRefused() throws IOException {
    write("other.jsonl", text(twoDistances()).replaceFirst("@[0-9a-f]{64}", "@" + "0".repeat(64)));
    assertEquals(2, replay("other.jsonl"));
    assertTrue(console.err().contains("values could differ"), console.err());
    assertEquals(0, log().readings().size());
  }

  @Test
  void missingFileAndUnknownJobAreSaid() {
    assertEquals(2, replay("nothing.jsonl"));
    assertTrue(console.err().contains("nothing.jsonl"), console.err());
    assertEquals(2, console.run("replay", "larkrise-1", "--stage", "arrival", "a.jsonl"));
    assertTrue(console.err().contains("larkrise-01"), console.err());
  }
}
