package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A meter is held against a known distance by what it sends over a pseudo-terminal. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class MetersCheckLinkTest {
  @TempDir Path folder;
  private TestConsole console;
  private Pty master;

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withReadings(folder).console;
    master = new Pty();
  }

  @AfterEach
  void close() throws IOException {
    master.close();
  }

  private String[] check(String wait) {
    String link = "serial:" + master.getSlaveName();
    return new String[] {
      "meters",
      "check",
      "laser",
      "--job",
      "larkrise-01",
      "--method",
      "known-distance",
      "--link",
      link,
      "--wait",
      wait,
      "known=12.000 m",
      "reading",
      "reading"
    };
  }

  private void sendsWhenAsked(int times, String text, CompletableFuture<Integer> ended)
      throws IOException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (console.err().split("Take the reading", -1).length <= times && !ended.isDone()) {
      assertTrue(System.nanoTime() < deadline, console.err());
      LockSupport.parkNanos(5_000_000);
    }
    master.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    master.getOutputStream().flush();
  }

  @Test
  void readingsComeFromTheMeterOneByOne() throws Exception {
    CompletableFuture<Integer> ended = console.begin(check("60"));
    sendsWhenAsked(1, "BATT 80%\r\n12.006 m\r\n", ended);
    sendsWhenAsked(2, "12.004 m\r\n", ended);
    assertEquals(0, ended.get(60, TimeUnit.SECONDS), console.err());
    assertTrue(console.out().contains("error +5.0 mm"), console.out());
    assertTrue(console.err().contains("reading = 12.006 m"), console.err());
    assertTrue(console.err().contains("not a reading"), console.err());
    assertEquals(0, console.run("verify"), console.out());
  }

  @Test
  void aSilentMeterIsSaidAndNothingIsStored() {
    assertEquals(3, console.run(check("1")));
    assertTrue(console.err().contains("nothing was stored"), console.err());
    assertEquals(0, console.run("reduce", "larkrise-01", "--json"), console.err());
    assertTrue(!console.out().contains("meter-outside"), console.out());
  }
}
