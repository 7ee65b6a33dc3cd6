package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
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
    CompletableFuture<Integer> ended = site.measuring("--wait", "5");
    site.meterSends("18.003 m\r\n20.1");
    site.untilRecorded(1);
    site.pull();
    site.until("the loss is said", () -> site.console.err().contains("opened again as soon as"));
    assertTrue(
        site.console.err().contains("4 byte(s) of an unfinished reading"), site.console.err());
    site.putBack();
    site.until("the return is said", () -> site.console.err().contains("is there again"));
    site.pause();
    site.measured("20.126 m\r\n");
    site.untilRecorded(2);
    assertFalse(ended.isDone());
    String second = site.list().get(1).text();
    assertEquals(second, site.log().readings().get(1).entry().target());
    // What comes as the link comes back may be an old value.
    site.pull();
    site.until(
        "the loss is said", () -> site.console.err().split("opened again as soon", -1).length == 3);
    site.putBack();
    site.until(
        "the return is said", () -> site.console.err().split("is there again", -1).length == 3);
    site.meterSends("9.002 m\r\n");
    site.until("it is held", () -> site.console.err().contains("as the link came back"));
    assertEquals(2, site.log().readings().size());
    site.pull();
    assertEquals(3, ended.get(60, TimeUnit.SECONDS), "it does not wait for ever");
  }

  @Test
  void aBurstIsHeldAndNeverSilentlyAssigned() throws Exception {
    CompletableFuture<Integer> ended = site.measuring();
    site.meterSends("18.003 m\r\n20.126 m\r\n9.001 m\r\n");
    site.until("the burst is held", () -> site.console.err().split("HELD: ", -1).length - 1 == 3);
    assertTrue(site.console.err().contains("came in one burst"), site.console.err());
    site.measured("18.004 m\r\n");
    site.untilRecorded(1);
    site.master().close();
    ended.get(30, TimeUnit.SECONDS);
    List<ReadingEntry> stored = site.log().readings().stream().map(row -> row.entry()).toList();
    assertEquals(List.of("18.004"), stored.stream().map(ReadingEntry::value).toList());
  }

  @Test
  void aMeterThatSendsByItselfIsNotTakenForOneTargetAfterTheOther() throws Exception {
    CompletableFuture<Integer> ended = site.measuring();
    site.meterSends("18.003 m\r\n");
    site.untilRecorded(1);
    for (int i = 0; i < 3; i++) {
      LockSupport.parkNanos(300_000_000L);
      site.meterSends("18.003 m\r\n");
      int held = i + 1;
      site.until("it is held", () -> site.console.err().split("HELD: ", -1).length - 1 == held);
    }
    assertTrue(site.console.err().contains("within a second of another"), site.console.err());
    site.master().close();
    ended.get(30, TimeUnit.SECONDS);
    JobLog log = site.log();
    assertEquals(1, log.readings().size());
    assertEquals(0, log.inForce().size(), "the first of the burst is withdrawn");
    assertEquals(0, site.console.run("verify"), site.console.err());
  }
}
