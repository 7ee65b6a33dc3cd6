package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.json.CanonicalJson;
import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.JobRevisionEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.sqlite.SqliteRecords.Mode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * What storing a reading costs above a bare insert, and what asking costs of a large record. Prints
 * Markdown. Arguments: folders to measure in, and {@code --large FOLDER} for the large record.
 */
public final class RecordBench {
  private static final int READINGS = 1000;

  /** Stored before the measured ones, into the same files, for the compiler and the log to settle. */
  private static final int WARM_UP = 5000;
  private static final int BATCH = 50;
  private static final int JOBS = 1000;

  private static final TimeOrderedIds IDS = new TimeOrderedIds(Clock.systemUTC());
  private static final JobKey JOB = JobKey.local("bench-01");

  private RecordBench() {}

  public static void main(String[] arguments) throws IOException, SQLException {
    System.out.printf(
        "%nCommit %s · %s %s, %d processors · Java %s · %s%n",
        System.getProperty("bench.commit", "unknown"),
        System.getProperty("os.name"),
        System.getProperty("os.arch"),
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("java.version"),
        OffsetDateTime.now(ZoneOffset.UTC).withNano(0));
    for (int i = 0; i < arguments.length; i++) {
      if (arguments[i].equals("--large")) {
        large(Path.of(arguments[++i]));
      } else {
        storing(Path.of(arguments[i]));
      }
    }
  }

  private static void storing(Path parent) throws IOException, SQLException {
    Path folder = Files.createTempDirectory(parent, "record-bench");
    try {
      double[][] times = oneRun(folder);
      System.out.printf(
          Locale.ROOT,
          "%n%d readings, one commit each, batches of %d interleaved, on %s (%s):%n%n"
              + "| | median of one, ms | all, ms | per second | record / this, medians | all |%n"
              + "|---|---|---|---|---|---|%n",
          READINGS, BATCH, parent, Files.getFileStore(parent).type());
      row("record", times[0], times[0]);
      row("bare JDBC, the record's keys and indexes", times[1], times[0]);
      row("bare JDBC, no index", times[2], times[0]);
    } finally {
      deleteAll(folder);
    }
  }

  /** One store, and how fast the record is beside it: above 1 when the record is the faster. */
  private static void row(String name, double[] times, double[] ours) {
    System.out.printf(
        Locale.ROOT,
        "| %s | %.3f | %.0f | %.0f | %.2f | %.2f |%n",
        name,
        median(times),
        sum(times),
        READINGS * 1000 / sum(times),
        median(times) / median(ours),
        sum(times) / sum(ours));
  }

  /** Milliseconds of each single store: ours, bare with the same indexes, bare without any. */
  private static double[][] oneRun(Path folder) throws IOException, SQLException {
    double[][] times = new double[3][WARM_UP + READINGS];
    try (SiteRecord record = SqliteRecords.open(folder.resolve("ours.db"), Mode.WRITE);
        RecordSession session = record.openSession(start());
        BareTable indexed =
            new BareTable(folder.resolve("indexed.db"), BareTable.Indexes.OF_THE_RECORD);
        BareTable bare = new BareTable(folder.resolve("bare.db"), BareTable.Indexes.NONE)) {
      session.append(JOB, JobRevisionEntry.of(1, "bench", "[job]\n"));
      for (int batch = 0; batch < WARM_UP + READINGS; batch += BATCH) {
        for (int i = batch; i < batch + BATCH; i++) {
          ReadingEntry reading = reading(i);
          times[0][i] = milliseconds(() -> session.append(JOB, reading));
        }
        storeBare(indexed, batch, times[1]);
        storeBare(bare, batch, times[2]);
      }
    }
    return Arrays.stream(times)
        .map(all -> Arrays.copyOfRange(all, WARM_UP, WARM_UP + READINGS))
        .toArray(double[][]::new);
  }

  private static void storeBare(BareTable bare, int batch, double[] times)
      throws IOException, SQLException {
    for (int i = batch; i < batch + BATCH; i++) {
      int number = i;
      String body = CanonicalJson.text(reading(i).body());
      times[i] = milliseconds(() -> bare.insert(number, body));
    }
  }

  private static void large(Path parent) throws IOException, SQLException {
    Path folder = Files.createTempDirectory(parent, "record-bench");
    Path file = folder.resolve("large.db");
    try {
      double fill = milliseconds(() -> fill(file));
      System.out.printf(
          Locale.ROOT,
          "%n%d jobs of %d readings each, every job a session of its own (%.0f MB, filled in %.0f s)"
              + " on %s:%n%n| question | ms, median of 5 |%n|---|---|%n",
          JOBS, READINGS, Files.size(file) / 1e6, fill / 1000, parent);
      try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE)) {
        JobKey job = JobKey.local("bench-0500");
        print("list all jobs", record::jobs);
        print("all of one job", () -> record.log(job));
        print("its newest job file", () -> record.newestRevision(job));
        print("the heads of all chains", record::heads);
        print("open a session and store one reading", () -> storeOne(record, job));
        print("verify all (once)", 1, () -> record.verify(DerivedNumber.NOT_CHECKED, List.of()));
      }
      Path one = folder.resolve("one.db");
      fillOne(one);
      try (SiteRecord record = SqliteRecords.open(one, Mode.READ)) {
        print("a job of 10,000 readings", () -> record.log(JOB));
      }
    } finally {
      deleteAll(folder);
    }
  }

  private static void fill(Path file) {
    try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE)) {
      for (int job = 0; job < JOBS; job++) {
        List<Entry> entries = new ArrayList<>();
        entries.add(JobRevisionEntry.of(1, "Job " + job, "[job]\n" + "# line\n".repeat(300)));
        for (int i = 0; i < READINGS; i++) {
          entries.add(reading(i));
        }
        try (RecordSession session = record.openSession(start())) {
          session.appendAll(
              JobKey.local(String.format(Locale.ROOT, "bench-%04d", job)), entries);
        }
      }
    }
  }

  private static void fillOne(Path file) {
    try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE);
        RecordSession session = record.openSession(start())) {
      List<Entry> entries = new ArrayList<>();
      for (int i = 0; i < 10_000; i++) {
        entries.add(reading(i));
      }
      session.appendAll(JOB, entries);
    }
  }

  private static void storeOne(SiteRecord record, JobKey job) {
    try (RecordSession session = record.openSession(start())) {
      session.append(job, reading(0));
    }
  }

  private static SessionStart start() {
    return new SessionStart("bench", "0.1.0", Clock.systemUTC());
  }

  static ReadingEntry reading(int number) {
    String text = String.format(Locale.ROOT, "%.3f", 6 + number / 1000.0);
    return ReadingEntry.builder(IDS.next(), "arrival", "distance", "slab.A1-slab.A4")
        .value(text, "m", Double.parseDouble(text))
        .meter("laser", "", "")
        .readAt(OffsetDateTime.parse("2026-03-02T09:15:30+01:00"))
        .operator("Amber")
        .link("serial:/dev/ttyUSB0", "362e3030306d0d0a")
        .source("measure")
        .build();
  }

  /** A step of a measurement. */
  @FunctionalInterface
  private interface Step {
    void run() throws IOException, SQLException;
  }

  private static void print(String question, Step step) throws IOException, SQLException {
    print(question, 5, step);
  }

  private static void print(String question, int repeats, Step step)
      throws IOException, SQLException {
    double[] times = new double[repeats];
    for (int i = 0; i < times.length; i++) {
      times[i] = milliseconds(step);
    }
    System.out.printf(Locale.ROOT, "| %s | %.1f |%n", question, median(times));
  }

  private static double milliseconds(Step step) throws IOException, SQLException {
    long begin = System.nanoTime();
    step.run();
    return (System.nanoTime() - begin) / 1e6;
  }

  private static double median(double[] times) {
    double[] sorted = times.clone();
    Arrays.sort(sorted);
    return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
  }

  private static double sum(double[] times) {
    return Arrays.stream(times).sum();
  }

  private static void deleteAll(Path folder) throws IOException {
    try (var paths = Files.walk(folder)) {
      for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
