package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * A meter that sends what no meter should. For how long: the system property {@code
 * datumpeg.hostile-seconds}, 1 for each kind in the normal build.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class HostileMeterTest {
  private static final long SECONDS = Long.getLong("datumpeg.hostile-seconds", 1);

  @TempDir Path folder;

  private interface Noise {
    byte[] next(SplittableRandom random);
  }

  @Test
  @Timeout(value = 1, unit = TimeUnit.HOURS)
  void endlessBytesWithoutALineEnd() throws Exception {
    survives(random -> "9".repeat(1 << 16).getBytes(StandardCharsets.US_ASCII));
  }

  @Test
  @Timeout(value = 1, unit = TimeUnit.HOURS)
  void linesOfAMegabyte() throws Exception {
    survives(random -> ("7".repeat(1 << 20) + " m\r\n").getBytes(StandardCharsets.US_ASCII));
  }

  @Test
  @Timeout(value = 1, unit = TimeUnit.HOURS)
  void endlessLinesThatSteerTheTerminal() throws Exception {
    survives(
        random ->
            "\u001b[2J\u001b]0;owned\u0007 12.3\u0000 m\u009b1A\u202e\n"
                .getBytes(StandardCharsets.UTF_8));
  }

  @Test
  @Timeout(value = 1, unit = TimeUnit.HOURS)
  void endlessRandomBytes() throws Exception {
    survives(
        random -> {
          byte[] bytes = new byte[1 << 14];
          random.nextBytes(bytes);
          return bytes;
        });
  }

  @Test
  @Timeout(value = 1, unit = TimeUnit.HOURS)
  void endlessReadings() throws Exception {
    survives(random -> "18.003 m\r\n".repeat(500).getBytes(StandardCharsets.US_ASCII));
  }

  /** After the noise an ordinary value is dealt with in seconds, in a heap of 48 MB. */
  private void survives(Noise noise) throws Exception {
    SiteFolder.withJob(folder);
    Pty master = new Pty();
    Process process = measuring(master);
    try {
      until(() -> said().contains("Measure "), process);
      long sent = send(noise, master);
      // Behind the noise: an end of line, a pause as a person makes, and a value.
      OutputStream out = master.getOutputStream();
      out.write("\r\nend\r\n".getBytes(StandardCharsets.US_ASCII));
      process.getOutputStream().write("again\n".getBytes(StandardCharsets.US_ASCII));
      process.getOutputStream().flush();
      LockSupport.parkNanos(1_500_000_000L);
      out.write("18.0042 m\r\n".getBytes(StandardCharsets.US_ASCII));
      until(() -> said().contains("18.0042 m for"), process);
      long kilobytes = largestResidentKilobytes(process);
      assertTrue(kilobytes < 200_000, kilobytes + " kB resident");
      System.getLogger(HostileMeterTest.class.getName())
          .log(
              System.Logger.Level.INFO, "{0} bytes sent, at most {1} kB resident", sent, kilobytes);
      process.getOutputStream().write("quit\n".getBytes(StandardCharsets.US_ASCII));
      process.getOutputStream().flush();
      assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it did not end");
      assertEquals(0, process.exitValue(), said());
    } finally {
      process.destroyForcibly();
      master.close();
    }
    assertEquals("", said().replaceAll("[\\P{C}\n]", ""), "what could steer the terminal");
    assertEquals(0, new TestConsole(folder).run("verify"));
  }

  private static long send(Noise noise, Pty master) throws IOException {
    SplittableRandom random = new SplittableRandom(20260302);
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
    long sent = 0;
    while (System.nanoTime() < end) {
      byte[] bytes = noise.next(random);
      master.getOutputStream().write(bytes);
      sent += bytes.length;
    }
    return sent;
  }

  private Process measuring(Pty master) throws IOException {
    return OwnHome.process(
            folder,
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx48m",
                "-cp",
                System.getProperty("java.class.path"),
                ProgramUnderKill.class.getName(),
                "measure",
                "larkrise-01",
                "--stage",
                "arrival",
                "--silent",
                "--link",
                "serial:" + master.getSlaveName(),
                "--record",
                folder.resolve("record.db").toString()))
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(folder.resolve("said.txt").toFile())
        .start();
  }

  /** The high-water mark that Linux keeps; elsewhere nothing is known, and 0 is returned. */
  private static long largestResidentKilobytes(Process process) throws IOException {
    Path status = Path.of("/proc/" + process.pid() + "/status");
    if (!Files.exists(status)) {
      return 0;
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmHWM:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
        .findFirst()
        .orElse(0);
  }

  private void until(BooleanSupplier happened, Process process) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(System.nanoTime() < deadline, "waited too long: " + end());
      assertTrue(process.isAlive(), end());
      LockSupport.parkNanos(10_000_000);
    }
  }

  private String end() {
    String said = said();
    return said.substring(Math.max(0, said.length() - 2000));
  }

  private String said() {
    try {
      return WrittenMeanwhile.text(folder.resolve("said.txt"));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
