package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * A meter that is pulled out and put back while nobody is there. How often: the system property
 * {@code datumpeg.replugs}, 5 in the normal build.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no pseudo-terminals of this kind")
class ReplugTest {
  @TempDir Path folder;

  @Test
  @Timeout(value = 2, unit = TimeUnit.HOURS)
  void everyLineSentWhilePluggedInIsInTheCaptureOnceAndInOrder() throws Exception {
    SiteFolder.withJob(folder);
    int replugs = Integer.getInteger("datumpeg.replugs", 5);
    // As udev does: a name that stays the same, whichever number the port has this time.
    Path port = folder.resolve("meter");
    StringBuilder sent = new StringBuilder();
    Process process = collecting(port);
    try {
      for (int i = 1; i <= replugs; i++) {
        Pty master = new Pty();
        plugIn(master, port);
        int returned = i;
        until(() -> returnsSaid() == returned, process);
        String line = (2 + i % 7) + "." + (1000 + i) + " m\r\n";
        master.getOutputStream().write(line.getBytes(StandardCharsets.US_ASCII));
        sent.append(line);
        until(() -> captured().length() == sent.length(), process);
        // And half a line, which must never become a reading.
        if (i % 2 == 0) {
          master.getOutputStream().write("9.9".getBytes(StandardCharsets.US_ASCII));
          sent.append("9.9");
          until(() -> captured().length() == sent.length(), process);
        }
        Files.delete(port);
        master.close();
      }
      assertTrue(process.isAlive(), said());
    } finally {
      process.destroy();
      assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it did not end");
    }
    assertEquals(sent.toString(), captured());
    assertEquals(replugs, table().lines().count() - 1, "each whole line once, no half line");
    assertEquals(0, new TestConsole(folder).run("verify"));
  }

  private Process collecting(Path port) throws IOException {
    return OwnHome.process(
            folder,
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Xmx48m",
                "-cp",
                System.getProperty("java.class.path"),
                ProgramUnderKill.class.getName(),
                "collect",
                "larkrise-01",
                "--stage",
                "arrival",
                "--link",
                "serial:" + port,
                "--record",
                folder.resolve("record.db").toString()))
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(folder.resolve("said.txt").toFile())
        .start();
  }

  private static void plugIn(Pty master, Path port) throws IOException {
    Path beside = port.resolveSibling("beside");
    Files.createSymbolicLink(beside, Path.of(master.getSlaveName()));
    Files.move(beside, port, StandardCopyOption.ATOMIC_MOVE);
  }

  private void until(BooleanSupplier happened, Process process) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(System.nanoTime() < deadline, "waited too long: " + said());
      assertTrue(process.isAlive(), said());
      LockSupport.parkNanos(3_000_000);
    }
  }

  private String said() {
    try {
      return WrittenMeanwhile.text(folder.resolve("said.txt"));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private long returnsSaid() {
    return said().lines().filter(line -> line.matches("serial:.* is there( again)?\\.")).count();
  }

  private Path made(String ending) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("captures"))) {
      return files.filter(file -> file.toString().endsWith(ending)).findFirst().orElseThrow();
    }
  }

  private String table() throws IOException {
    return Files.readString(made(".unassigned.csv"));
  }

  private long readUntil;
  private final StringBuilder soFar = new StringBuilder();

  /** What the capture holds of received bytes, as text; read on from where it was read to. */
  private String captured() {
    try (RandomAccessFile file = new RandomAccessFile(made(".capture.jsonl").toFile(), "r")) {
      file.seek(readUntil);
      byte[] rest = new byte[(int) (file.length() - readUntil)];
      file.readFully(rest);
      String text = new String(rest, StandardCharsets.UTF_8);
      int whole = text.lastIndexOf('\n') + 1;
      readUntil += whole;
      text.substring(0, whole)
          .lines()
          .filter(line -> line.contains("\"dir\":\"rx\""))
          .forEach(
              line ->
                  soFar.append(
                      bytes(
                          line.substring(line.indexOf("\"hex\":\"") + 7, line.lastIndexOf('"')))));
      return soFar.toString();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static String bytes(String hex) {
    return new String(HexFormat.of().parseHex(hex), StandardCharsets.US_ASCII);
  }
}
