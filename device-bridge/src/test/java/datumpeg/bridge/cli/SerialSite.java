package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.pty4j.unix.Pty;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/** A site with a job, and a pseudo-terminal of which the test is the meter and the cable. */
final class SerialSite implements AutoCloseable {
  final TestConsole console;
  private final Path folder;
  private Pty master = new Pty();
  private long quietSinceNanos = System.nanoTime();

  SerialSite(Path folder) throws IOException {
    this.folder = folder;
    this.console = SiteFolder.withJob(folder).console;
  }

  /** The meter's end of the cable. */
  Pty master() {
    return master;
  }

  @Override
  public void close() throws IOException {
    if (!master.isClosed()) {
      master.close();
    }
  }

  /** A session that ends when its meter is away, or after the wait it is given. */
  CompletableFuture<Integer> measuring(String... more) {
    return measuring(InputStream.nullInputStream(), more);
  }

  /** The same, with what is typed meanwhile. */
  CompletableFuture<Integer> measuring(InputStream typed, String... more) {
    String[] words =
        Stream.concat(
                Stream.of(
                    "measure",
                    "larkrise-01",
                    "--stage",
                    "arrival",
                    "--by",
                    "Ines",
                    "--link",
                    "serial:" + port()),
                more.length == 0 ? Stream.of("--wait", "0") : Stream.of(more))
            .toArray(String[]::new);
    CompletableFuture<Integer> ended = console.begin(typed, words);
    until("a target is asked for", () -> console.err().contains("Measure from") || ended.isDone());
    return ended;
  }

  /** As udev names a port: by a link that stays the same, whichever number the port has. */
  private Path port() {
    Path port = folder.resolve("meter");
    try {
      Path beside = Files.createSymbolicLink(folder.resolve("beside"), slave());
      return Files.move(beside, port, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private Path slave() {
    return Path.of(master.getSlaveName());
  }

  /** The name goes first: the number may be given to somebody else's port at once. */
  void pull() throws IOException {
    Files.delete(folder.resolve("meter"));
    master.close();
  }

  /** Another port, by the same name. */
  void putBack() throws IOException {
    master = new Pty();
    port();
  }

  void until(String what, BooleanSupplier happened) {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!happened.getAsBoolean()) {
      assertTrue(
          System.nanoTime() < deadline, "waited too long until " + what + ": " + console.err());
      LockSupport.parkNanos(5_000_000);
    }
    quietSinceNanos = System.nanoTime();
  }

  /**
   * No sooner behind what came before than a person measures two targets: behind what was waited
   * for, not what was sent, since a busy machine takes its time with that.
   */
  void measured(String text) throws IOException {
    LockSupport.parkNanos(quietSinceNanos + 1_250_000_000L - System.nanoTime());
    meterSends(text);
  }

  void meterSends(String text) throws IOException {
    quietSinceNanos = System.nanoTime();
    master.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
    master.getOutputStream().flush();
  }

  void untilRecorded(int count) {
    until(
        count + " readings are recorded",
        () -> console.err().split("\n  recorded ", -1).length - 1 == count);
  }

  JobLog log() {
    return log(console);
  }

  static JobLog log(TestConsole console) {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      return opened.log(StoredJob.find(opened, "larkrise-01"));
    }
  }

  List<Target> list() {
    try (SiteRecord opened = SqliteRecords.open(console.recordFile(), SqliteRecords.Mode.READ)) {
      StoredJob job = StoredJob.load(opened, "larkrise-01");
      return MeasuringList.of(job.job().setOut(), job.job().stage("arrival").orElseThrow())
          .targets();
    }
  }
}
