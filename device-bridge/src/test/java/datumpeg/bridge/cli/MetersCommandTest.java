package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class MetersCommandTest {
  @TempDir Path folder;
  private TestConsole console;

  @BeforeEach
  void open() {
    console = new TestConsole(folder);
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
  void watchShowsBytesAsTheyComeAndSaysWhenThePortIsGone() throws Exception {
    Pty master = new Pty();
    String link = "serial:" + master.getSlaveName();
    CompletableFuture<Integer> ended = console.begin("meters", "watch", link, "--wait", "0");
    until(() -> console.err().contains("Watching " + link) || ended.isDone());
    send(master, "18.004 m\u001b[2J\r\n");
    until(() -> console.out().contains("0d 0a") || ended.isDone());
    master.close();

    assertEquals(3, ended.get(60, TimeUnit.SECONDS), console.err());
    assertTrue(console.out().contains("31 38 2e 30 30 34 20 6d"), console.out());
    assertTrue(console.out().contains("18.004 m.[2J"), console.out());
    assertFalse(console.out().contains("\u001b"), "an escape reached the screen");
    assertTrue(console.err().contains("was lost after 14 bytes"), console.err());
  }

  private static void send(Pty master, String text) throws IOException {
    master.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    master.getOutputStream().flush();
  }

  private void until(BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(System.nanoTime() < deadline, "waited too long: " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
  }

  @Test
  void listSaysLinksOrThatThereAreNone() {
    assertEquals(0, console.run("meters", "list"), console.err());
    assertTrue(
        console.out().startsWith("serial:") || console.out().contains("No link was found"),
        console.out());
  }

  @Test
  void theDoctorAlwaysAnswers() {
    assertEquals(0, console.run("meters", "doctor"), console.err());
    assertTrue(console.out().contains("serial ports: "), console.out());
    assertTrue(console.out().contains("sound: "), console.out());
    assertEquals(0, console.run("meters", "doctor", "--json"), console.err());
    assertTrue(console.out().contains("\"subject\": \"permission\""), console.out());
  }

  @Test
  void onlyALiveLinkCanBeWatched() {
    assertEquals(2, console.run("meters", "watch", "replay:arrival.capture.jsonl"));
    assertTrue(console.err().contains("no live bytes"), console.err());
    assertEquals(2, console.run("meters", "watch", "cereal:/dev/x"));
    assertEquals(2, console.run("--json", "meters", "watch", "serial:/dev/ttyNoSuch7"));
    assertTrue(console.err().contains("no JSON document"), console.err());
    assertEquals(3, console.run("meters", "watch", "serial:/dev/ttyNoSuch7"));
    assertTrue(console.err().contains("/dev/ttyNoSuch7"), console.err());
  }
}
