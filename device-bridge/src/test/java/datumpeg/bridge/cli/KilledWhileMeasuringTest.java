package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * {@code kill -9} at random moments of a session that takes some 200 readings a second. How often:
 * the system property {@code datumpeg.kills}, 3 in the normal build.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no signal 9")
class KilledWhileMeasuringTest {
  /** Each round reads the whole record again, so that one record for all would take hours. */
  private static final int KILLS_A_RECORD = 100;

  @TempDir Path folder;

  @Test
  @Timeout(value = 3, unit = TimeUnit.HOURS)
  void everyAcknowledgedReadingIsThereAndNoneTwice() throws Exception {
    SplittableRandom random = new SplittableRandom(20260302);
    int kills = Integer.getInteger("datumpeg.kills", 3);
    long acknowledged = 0;
    for (int done = 0; done < kills; done += KILLS_A_RECORD) {
      Path site = Files.createDirectory(folder.resolve("site-" + done));
      acknowledged += killsOfOneRecord(site, Math.min(KILLS_A_RECORD, kills - done), random);
      System.getLogger(KilledWhileMeasuringTest.class.getName())
          .log(System.Logger.Level.INFO, "{0} readings acknowledged so far", acknowledged);
    }
    assertTrue(acknowledged > 0, "nothing was measured before the kills");
  }

  /** Returns how many readings were acknowledged in all rounds. */
  private static long killsOfOneRecord(Path site, int kills, SplittableRandom random)
      throws Exception {
    TestConsole console = SiteFolder.withJob(site).console;
    long acknowledged = 0;
    for (int i = 1; i <= kills; i++) {
      acknowledged += measureUntilKilled(site, random, i);
      JobLog log = log(console.recordFile());
      long distinct = log.readings().stream().map(row -> row.entry().source()).distinct().count();
      assertEquals(log.readings().size(), distinct, "one reading a line of a capture");
      // At the kill a reading may be committed whose acknowledgement was not printed yet.
      assertTrue(log.readings().size() >= acknowledged, acknowledged + " were acknowledged");
      assertTrue(log.readings().size() <= acknowledged + i, acknowledged + " were acknowledged");
    }
    assertEquals(0, console.run("verify"), console.out());
    return acknowledged;
  }

  /** Returns how many readings were acknowledged in whole lines. */
  private static long measureUntilKilled(Path site, SplittableRandom random, int round)
      throws Exception {
    Path said = site.resolve("said-" + round + ".txt");
    Process process =
        OwnHome.process(
                site,
                List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-XX:TieredStopAtLevel=1",
                    "-cp",
                    System.getProperty("java.class.path"),
                    ProgramUnderKill.class.getName(),
                    "measure",
                    "larkrise-01",
                    "--stage",
                    "arrival",
                    "--silent",
                    "--round",
                    String.valueOf(round),
                    "--record",
                    site.resolve("record.db").toString()))
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(said.toFile())
            .start();
    long deadline = System.nanoTime() + TimeUnit.MINUTES.toNanos(5);
    while (!WrittenMeanwhile.text(said).contains("Measure ")) {
      assertTrue(
          process.isAlive() && System.nanoTime() < deadline,
          "run "
              + round
              + ", alive "
              + process.isAlive()
              + ", said: "
              + WrittenMeanwhile.text(said));
      LockSupport.parkNanos(5_000_000);
    }
    Thread typist = new Thread(() -> type(process));
    typist.start();
    // However slow this machine is, something is measured before the first kill.
    while (round == 1 && acknowledged(said) == 0 && System.nanoTime() < deadline) {
      LockSupport.parkNanos(5_000_000);
    }
    LockSupport.parkNanos(random.nextLong(5, 900) * 1_000_000);
    process.destroyForcibly().waitFor();
    typist.join();
    long acknowledged = acknowledged(said);
    Files.delete(said);
    return acknowledged;
  }

  private static long acknowledged(Path said) throws IOException {
    return WrittenMeanwhile.text(said).split("\n  recorded ", -1).length - 1L;
  }

  /** One target over and over, so that the session does not end by itself. */
  private static void type(Process process) {
    try (OutputStream out = process.getOutputStream()) {
      while (process.isAlive()) {
        out.write("18.003\nback\n".getBytes(StandardCharsets.UTF_8));
        out.flush();
      }
    } catch (IOException killed) {
      // The pipe of a killed process is broken, which ends the typing.
    }
  }

  private static JobLog log(Path record) {
    try (SiteRecord opened = SqliteRecords.open(record, SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01"));
    }
  }
}
