package datumpeg.bridge.collect;

import com.pty4j.unix.Pty;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.jobs.JobIntake;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Objects;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * From the last byte of a meter's line on a pseudo-terminal until the reading is committed and
 * shown, beside a write of one page with fsync on the same file system, by turns. Prints Markdown.
 * Arguments: folder, samples.
 */
public final class LatencyBench {
  private static final int WARM_UP = 10;

  private LatencyBench() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory(Path.of(arguments[0]), "latency-bench");
    int samples = Integer.parseInt(arguments[1]);
    double[] latency = new double[samples];
    double[] sync = new double[samples];
    Pty master = new Pty();
    Shown shown = new Shown();
    SessionStart start = new SessionStart("bench", "bench", Clock.systemUTC());
    MeterLink link =
        new MeterLink(
            "L1",
            new LinkAddress.Serial(master.getSlaveName(), SerialSettings.DEFAULT),
            MeterProfiles.GENERAL_TEXT_LINE);
    Path file = folder.resolve("record.db");
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE);
        FileChannel page =
            FileChannel.open(
                folder.resolve("page"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      JobIntake.take(
          record,
          JobFile.load(
              Files.writeString(folder.resolve("bench.toml"), JobTexts.LARKRISE), "bench.toml"),
          start);
      StoredJob job = StoredJob.load(record, "larkrise-01");
      LiveMeasuring measuring =
          new LiveMeasuring(
              file, "arrival", List.of(link), start, WaitingTerms.usual(SpareFolders.NONE));
      StageWork work = StageWork.of(job, "arrival", OptionalInt.empty());
      Thread person =
          new Thread(
              () -> {
                try {
                  for (int i = -WARM_UP; i < samples; i++) {
                    Thread.sleep(1050); // sooner it would be a burst
                    long sent = System.nanoTime();
                    master
                        .getOutputStream()
                        .write("18.003 m\r\n".getBytes(StandardCharsets.US_ASCII));
                    Long at = shown.times.poll(20, TimeUnit.SECONDS);
                    double synced = sync(page);
                    if (at == null) {
                      throw new IllegalStateException("no reading came");
                    }
                    if (i >= 0) {
                      latency[i] = (at - sent) / 1e6;
                      sync[i] = synced;
                    }
                    shown.session().typed("back");
                  }
                  shown.session().typed("quit");
                } catch (IOException | InterruptedException e) {
                  throw new IllegalStateException(e);
                }
              });
      measuring.measure(
          record,
          job,
          work.asked(),
          collector -> work.setting(collector, job, record, Guide.Order.LISTED),
          shown,
          measuring.captureFile(job),
          live -> {
            live.expectInput();
            shown.session = live;
            person.start();
          });
      person.join();
    }
    print(latency, sync, arguments[0]);
    master.close();
  }

  private static double sync(FileChannel page) throws IOException {
    long start = System.nanoTime();
    page.write(ByteBuffer.allocate(4096), 0);
    page.force(false);
    return (System.nanoTime() - start) / 1e6;
  }

  private static void print(double[] latency, double[] sync, String folder) throws IOException {
    System.out.printf(
        "%n%d readings, on %s (%s):%n%n| | median, ms | p99, ms | largest, ms |%n|---|---|---|---|%n",
        latency.length, folder, Files.getFileStore(Path.of(folder)).type());
    double[] beyond = new double[latency.length];
    for (int i = 0; i < beyond.length; i++) {
      beyond[i] = latency[i] - sync[i];
    }
    row("last byte to committed and shown", latency);
    row("one page with fsync", sync);
    row("the first beyond the second, pair by pair", beyond);
  }

  private static void row(String name, double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    System.out.printf(
        Locale.ROOT,
        "| %s | %.2f | %.2f | %.2f |%n",
        name,
        sorted[sorted.length / 2],
        sorted[(int) Math.ceil(sorted.length * 0.99) - 1],
        sorted[sorted.length - 1]);
  }

  /** Prints as the terminal does, and keeps when. */
  private static final class Shown implements SessionWatcher {
    private final BlockingQueue<Long> times = new LinkedBlockingQueue<>();
    private volatile @Nullable LiveSession session;

    LiveSession session() {
      return Objects.requireNonNull(session, "no session has begun");
    }

    @Override
    public void recorded(ReadingEntry reading) {
      System.err.printf(
          "  recorded %s %s for %s%n", reading.value(), reading.unit(), reading.target());
      times.add(System.nanoTime());
    }

    @Override
    public void asking(Wanted wanted, int leftAfterThis) {}

    @Override
    public void withdrawn(ReadingEntry reading) {}

    @Override
    public void held(GuideState.Question question) {
      System.err.println("held: " + question.why());
    }

    @Override
    public void waiting(int count, String why) {}

    @Override
    public void drained() {}

    @Override
    public void captureEnded(String why) {}

    @Override
    public void putAside(String why) {
      System.err.println(why);
    }

    @Override
    public void lost(LinkLostException loss, int droppedByteCount) {}
  }
}
