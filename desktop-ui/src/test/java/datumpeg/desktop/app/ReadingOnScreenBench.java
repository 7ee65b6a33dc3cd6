package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.source.SiteRecordOpening;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javafx.animation.AnimationTimer;
import javafx.scene.control.TableView;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long a reading that another process committed takes until it is on screen: from the end of
 * its commit to the pulse behind the change of the outcomes shown. Once for readings that agree, as
 * nearly all do, and once for readings that contradict each other, where a slip is looked for. Not
 * part of the build; docs/benchmarks/window.md says how it is run.
 *
 * <p>Both processes read one clock: on Linux {@code System.nanoTime} is CLOCK_MONOTONIC.
 */
@Tag("bench")
@EnabledOnOs(value = OS.LINUX, disabledReason = "elsewhere two processes share no such clock")
class ReadingOnScreenBench {
  private static final int COUNT = 40;
  private static final int WARM_UP = 10;

  @TempDir Path folder;

  /** The distances of the slab again and again, each within a millimetre of what it was. */
  @Test
  void readingThatAgrees() throws Exception {
    measure("agreeing", 2);
  }

  /** One side of the slab again and again, by turns as it is and 20 mm longer. */
  @Test
  void readingThatContradictsOthers() throws Exception {
    measure("contradicting", 2);
  }

  /** As the first, of a job with readings of every stage. */
  @Test
  void readingThatAgreesOfAJobNearlyDone() throws Exception {
    measure("agreeing", Integer.MAX_VALUE);
  }

  /**
   * Measures with a sample of its own.
   *
   * @param steps of the sample that are done before, at most
   */
  private void measure(String which, int steps) throws Exception {
    Path file = folder.resolve("site.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.steps().subList(0, Math.min(steps, sample.steps().size())).forEach(sample::run);
    HeadlessToolkit.start();
    Stage stage = HeadlessToolkit.on(Stage::new);
    BlockingQueue<Long> shown = new LinkedBlockingQueue<>();
    LiveWindow window =
        HeadlessToolkit.on(
            () ->
                new LiveWindow(
                    file.toString(),
                    new SiteRecordOpening(file),
                    "larkrise-01",
                    new SettingsFile(folder.resolve("desktop.properties")),
                    Clock.systemUTC(),
                    ZoneOffset.UTC));
    HeadlessToolkit.run(() -> window.openOn(stage));
    HeadlessToolkit.run(() -> window.window().open("larkrise-01", "arrival"));
    HeadlessToolkit.until("outcomes", () -> !outcomes(stage).isEmpty());
    HeadlessToolkit.run(() -> listen(stage, shown));
    List<Double> millis = measure(file, which, shown);
    HeadlessToolkit.run(stage::close);
    window.close();
    Collections.sort(millis);
    tell(which + (steps > 2 ? ", readings of every stage" : ", first stage"), millis);
  }

  private static String outcomes(Stage stage) {
    return stage.getScene().lookup("#outcomes") instanceof TableView<?> table
            && !table.getItems().isEmpty()
        ? table.getItems().toString()
        : "";
  }

  /** Notes the pulse behind each change: what changed is painted by then. */
  private static void listen(Stage stage, BlockingQueue<Long> shown) {
    new AnimationTimer() {
      private String before = outcomes(stage);
      private boolean changed;

      @Override
      public void handle(long now) {
        if (changed) {
          shown.add(System.nanoTime());
          changed = false;
        }
        String after = outcomes(stage);
        changed = !after.equals(before);
        before = after;
      }
    }.start();
  }

  private static List<Double> measure(Path file, String which, BlockingQueue<Long> shown)
      throws Exception {
    Process writer =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Writer.class.getName(),
                file.toString(),
                which)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    List<Double> millis = new ArrayList<>();
    try (BufferedReader told =
            new BufferedReader(
                new InputStreamReader(writer.getInputStream(), StandardCharsets.UTF_8));
        PrintStream next =
            new PrintStream(writer.getOutputStream(), true, StandardCharsets.UTF_8)) {
      for (int i = 0; i < COUNT; i++) {
        shown.clear();
        next.println();
        long committed = Long.parseLong(String.valueOf(told.readLine()));
        Long at = shown.poll(30, TimeUnit.SECONDS);
        while (at != null && at < committed) { // of what was shown before
          at = shown.poll(30, TimeUnit.SECONDS);
        }
        assertTrue(at != null, "reading " + i + " never came on screen");
        if (i >= WARM_UP && at != null) {
          millis.add((at - committed) / 1e6);
        }
      }
    }
    assertEquals(0, writer.waitFor());
    return millis;
  }

  private static void tell(String what, List<Double> sorted) throws IOException {
    Path table = Path.of(System.getProperty("datumpeg.root"), "desktop-ui/target/on-screen.md");
    if (!Files.exists(table)) {
      Files.writeString(table, "| readings | | median | p95 | longest |\n|---|---|---|---|---|\n");
    }
    Files.writeString(
        table,
        String.format(
            Locale.ROOT,
            "| %s | %d | %.0f ms | %.0f ms | %.0f ms |%n",
            what,
            sorted.size(),
            sorted.get(sorted.size() / 2),
            sorted.get((int) Math.ceil(sorted.size() * 0.95) - 1),
            sorted.get(sorted.size() - 1)),
        StandardOpenOption.APPEND);
  }

  /** The other process: commits one reading after the other and says when each was committed. */
  static final class Writer {
    private Writer() {}

    public static void main(String[] arguments) throws Exception {
      PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
      BufferedReader asked =
          new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
      SplittableRandom random = new SplittableRandom(20260320);
      TimeOrderedIds ids = new TimeOrderedIds(Clock.systemUTC());
      try (SiteRecord record = SqliteRecords.open(Path.of(arguments[0]), SqliteRecords.Mode.WRITE);
          RecordSession session =
              record.openSession(new SessionStart("bench", "bench", Clock.systemUTC()))) {
        StoredJob job = StoredJob.load(record, "larkrise-01");
        List<Reading> distances = distances(job);
        for (int i = 0; i < COUNT; i++) {
          asked.readLine();
          Thread.sleep(random.nextLong(300, 600));
          Reading like = distances.get(i % distances.size());
          double metres = like.valueSi() + random.nextDouble(-0.001, 0.001);
          if (arguments[1].equals("contradicting")) {
            like = distances.get(0);
            metres = like.valueSi() + i % 2 * 0.02;
          }
          String value = String.format(Locale.ROOT, "%.4f", metres);
          session.append(
              job.key(),
              ReadingEntry.builder(ids.next(), "arrival", "distance", like.target().text())
                  .value(value, "m", Double.parseDouble(value))
                  .readAt(OffsetDateTime.now(ZoneOffset.UTC))
                  .source("bench row " + i)
                  .build());
          out.println(System.nanoTime());
        }
      }
    }

    private static List<Reading> distances(StoredJob job) {
      return job.readings().stream()
          .filter(reading -> reading.stage().equals("arrival"))
          .filter(reading -> reading.target().quantity() == MeasuredQuantity.DISTANCE)
          .toList();
    }
  }
}
