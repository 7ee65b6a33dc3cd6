package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.exchange.TableIntake;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.jobs.JobIntake;
import datumpeg.bridge.json.CanonicalJson;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.io.IOException;
import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Many readings stored in one transaction, beside a bare JDBC batch of the same columns, keys and
 * indexes, by turns. Prints Markdown. Arguments: folder, rows, runs.
 */
public final class ImportBench {
  private static final SessionStart START = new SessionStart("bench", "bench", Clock.systemUTC());

  private static final String[] NAMES = {
    "bare JDBC batch, the record's own table without its rules",
    "bare JDBC batch, the record's keys and indexes",
    "bare JDBC batch, no index",
    "record, one transaction",
    "`enter`: read, check and store the table"
  };

  private ImportBench() {}

  public static void main(String[] arguments) throws IOException, SQLException {
    Path parent = Path.of(arguments[0]);
    int rows = Integer.parseInt(arguments[1]);
    int runs = Integer.parseInt(arguments[2]);
    double[][] seconds = new double[NAMES.length][runs];
    double[][] processorSeconds = new double[NAMES.length][runs];
    one(parent, rows, new Cost[NAMES.length]); // for the compiler
    for (int run = 0; run < runs; run++) {
      Cost[] times = new Cost[NAMES.length];
      one(parent, rows, times);
      for (int i = 0; i < times.length; i++) {
        seconds[i][run] = times[i].seconds();
        processorSeconds[i][run] = times[i].processorSeconds();
      }
    }
    System.out.printf(
        "| | rows a second, median of %d | to the first | processor time of all threads, µs a row |%n"
            + "|---|---|---|---|%n",
        runs);
    for (int i = 0; i < NAMES.length; i++) {
      System.out.printf(
          Locale.ROOT,
          "| %s | %.0f | %.2f | %.1f |%n",
          NAMES[i],
          rows / median(seconds[i]),
          median(seconds[0]) / median(seconds[i]),
          median(processorSeconds[i]) / rows * 1e6);
    }
  }

  private record Cost(double seconds, double processorSeconds) {}

  private static final class Watch {
    private static final OperatingSystemMXBean SYSTEM =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private final long startNanos = System.nanoTime();
    private final long startProcessorNanos = SYSTEM.getProcessCpuTime();

    /** Of all threads: a second thread that works beside the first costs too. */
    Cost read() {
      return new Cost(
          (System.nanoTime() - startNanos) / 1e9,
          (SYSTEM.getProcessCpuTime() - startProcessorNanos) / 1e9);
    }
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static void one(Path parent, int rows, Cost[] times) throws IOException, SQLException {
    Path folder = Files.createTempDirectory(parent, "import-bench");
    try {
      List<ReadingEntry> readings = readings(rows);
      List<String> bodies =
          readings.stream().map(reading -> CanonicalJson.text(reading.body())).toList();
      Path own = folder.resolve("own.db");
      SqliteRecords.open(own, SqliteRecords.Mode.WRITE).close();
      times[0] = bare(own, BareTable.Indexes.OWN_WITHOUT_RULES, bodies);
      times[1] = bare(folder.resolve("keys.db"), BareTable.Indexes.OF_THE_RECORD, bodies);
      times[2] = bare(folder.resolve("none.db"), BareTable.Indexes.NONE, bodies);
      times[3] = record(folder.resolve("record.db"), readings);
      times[4] = enter(folder.resolve("enter.db"), rows);
    } finally {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }

  private static List<ReadingEntry> readings(int count) {
    TimeOrderedIds ids = new TimeOrderedIds(Clock.systemUTC());
    List<ReadingEntry> readings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double metres = 18 + i % 100 / 10000.0;
      readings.add(
          ReadingEntry.builder(ids.next(), "arrival", "distance", "slab.A1-slab.A4")
              .value(String.format(Locale.ROOT, "%.4f", metres), "m", metres)
              .readAt(OffsetDateTime.parse("2026-03-02T08:15:30Z"))
              .operator("Ines")
              .meter("laser", "", "")
              .source("table t.csv line " + (i + 2))
              .build());
    }
    return readings;
  }

  private static Cost bare(Path file, BareTable.Indexes indexes, List<String> bodies)
      throws SQLException {
    try (BareTable table = new BareTable(file, indexes)) {
      Watch watch = new Watch();
      table.batch(bodies);
      return watch.read();
    }
  }

  private static Cost record(Path file, List<ReadingEntry> readings) {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE);
        RecordSession session = record.openSession(START)) {
      Watch watch = new Watch();
      session.appendAll(JobKey.local("larkrise-01"), readings);
      return watch.read();
    }
  }

  private static Cost enter(Path file, int rows) throws IOException {
    StringBuilder table = new StringBuilder("stage,quantity,target,value,unit,at,operator\n");
    for (int i = 0; i < rows; i++) {
      table.append(
          String.format(
              Locale.ROOT,
              "arrival,distance,slab.A1-slab.A4,%.4f,m,2026-03-02T08:15:30Z,Ines%n",
              18 + i % 100 / 10000.0));
    }
    byte[] bytes = table.toString().getBytes(StandardCharsets.UTF_8);
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE)) {
      JobIntake.take(
          record,
          JobFile.load(
              Files.writeString(file.resolveSibling("bench.toml"), JobTexts.LARKRISE),
              "bench.toml"),
          START);
      Watch watch = new Watch();
      TableIntake.take(record, "larkrise-01", bytes, "t.csv", TableIntake.Repeat.REFUSE, START);
      return watch.read();
    }
  }
}
