package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Measuring over a cable that is pulled, and with a meter that talks out of turn. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class MeasureLossTest {
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
  void aPulledCableThatIsPutBackGoesOnWithTheSameTarget() throws Exception {
    try (PipedOutputStream keyboard = new PipedOutputStream();
        PipedInputStream typed = new PipedInputStream(keyboard)) {
      CompletableFuture<Integer> ended = site.measuring(typed);
      site.meterSends("18.003 m\r\n20.1");
      site.untilRecorded(1);
      pullAndPutBack();
      assertTrue(
          site.console.err().contains("4 byte(s) of an unfinished reading"), site.console.err());
      site.measured("20.126 m\r\n");
      site.untilRecorded(2);
      assertFalse(ended.isDone());
      String second = site.list().get(1).text();
      assertEquals(second, site.log().readings().get(1).entry().target());
      // What comes as the link comes back may be an old value.
      int late = 0;
      while (!isHeldBehindAReturn(2 + late)) {
        late++;
        assertTrue(late < 5, site.console.err());
      }
      assertEquals(2 + late, site.log().readings().size());
      keyboard.write("quit\n".getBytes(StandardCharsets.UTF_8));
      keyboard.flush();
      assertEquals(0, ended.get(60, TimeUnit.SECONDS), site.console.err());
    }
  }

  private void pullAndPutBack() throws IOException {
    int losses = said("opened again as soon as");
    int returns = said("is there again");
    site.pull();
    site.until("the loss is said", () -> said("opened again as soon as") > losses);
    site.putBack();
    site.until("the return is said", () -> said("is there again") > returns);
  }

  /** False where this machine took a second over it, after which the value counts. */
  private boolean isHeldBehindAReturn(int recorded) throws IOException {
    pullAndPutBack();
    site.meterSends("9.00%d m\r\n".formatted(recorded));
    site.until(
        "it is held", () -> said("as the link came back") > 0 || said("\n  recorded ") > recorded);
    return said("as the link came back") > 0;
  }

  private int said(String words) {
    return site.console.err().split(Pattern.quote(words), -1).length - 1;
  }

  @Test
  void aCableThatStaysPulledIsNotAwaitedForEver() throws Exception {
    CompletableFuture<Integer> ended = site.measuring("--wait", "1");
    site.pull();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), site.console.err());
    assertEquals(1, said("opened again as soon as"), site.console.err());
  }

  @Test
  void aBurstIsHeldAndNeverSilentlyAssigned() throws Exception {
    CompletableFuture<Integer> ended = site.measuring();
    site.meterSends("18.003 m\r\n20.126 m\r\n9.001 m\r\n");
    site.until("the burst is held", () -> said("HELD: ") == 3);
    assertTrue(site.console.err().contains("came in one burst"), site.console.err());
    site.measured("18.004 m\r\n");
    site.untilRecorded(1);
    site.master().close();
    ended.get(60, TimeUnit.SECONDS);
    List<ReadingEntry> stored = site.log().readings().stream().map(row -> row.entry()).toList();
    assertEquals(List.of("18.004"), stored.stream().map(ReadingEntry::value).toList());
  }

  @Test
  void aMeterThatSendsByItselfIsNotTakenForOneTargetAfterTheOther() throws Exception {
    int slow = 0;
    while (!sendsByItself()) {
      slow++;
      assertTrue(slow < 5, site.console.err());
      site.close();
      site = new SerialSite(Files.createDirectory(folder.resolve("again-" + slow)));
    }
    JobLog log = site.log();
    assertEquals(1, log.readings().size());
    assertEquals(0, log.inForce().size(), "the first of the burst is withdrawn");
    assertEquals(0, site.console.run("verify"), site.console.err());
  }

  /** False where this machine took a second between two values, which are no burst then. */
  private boolean sendsByItself() throws Exception {
    CompletableFuture<Integer> ended = site.measuring();
    site.meterSends("18.003 m\r\n");
    site.untilRecorded(1);
    for (int i = 0; i < 3; i++) {
      int dealtWith = said("HELD: ") + said("\n  recorded ");
      site.meterSends("18.003 m\r\n");
      site.until("it is held", () -> said("HELD: ") + said("\n  recorded ") > dealtWith);
    }
    boolean burst = said("within a second of another") == 3;
    site.master().close();
    ended.get(60, TimeUnit.SECONDS);
    return burst;
  }
}
