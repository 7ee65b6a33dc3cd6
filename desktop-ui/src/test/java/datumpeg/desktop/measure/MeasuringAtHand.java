package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.collect.Guide;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import datumpeg.desktop.app.SampleJob;
import datumpeg.desktop.measure.MeasurePage.Running;
import datumpeg.desktop.measure.MeasurePage.Stands;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** Measuring on a real record, without a toolkit: the test's thread is the screen's. */
abstract class MeasuringAtHand {
  final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  final List<String> heard = new ArrayList<>();
  final Map<String, String> kept = new TreeMap<>();
  final Path file;
  final RecordSessions sessions;
  MeasureViewModel model;

  MeasuringAtHand(@TempDir Path folder) {
    file = folder.resolve("site.db");
    SampleJob sample = SampleJob.of("larkrise-01", file);
    sample.run(sample.steps().get(0));
    sessions =
        new RecordSessions(
            file, "test", Clock.systemUTC(), ZoneOffset.UTC, Words.of(Locale.ROOT), screen::add);
    model = opened();
  }

  MeasureViewModel opened() {
    MeasureViewModel fresh =
        new MeasureViewModel(
            Words.of(Locale.ROOT),
            sessions,
            new Sounds() {
              @Override
              public void accepted() {
                heard.add("accepted");
              }

              @Override
              public void held() {
                heard.add("held");
              }
            },
            kept::putAll);
    fresh.shown(true);
    fresh.choose("larkrise-01", "arrival");
    return fresh;
  }

  @AfterEach
  void close() {
    sessions.close();
  }

  void until(String what, BooleanSupplier holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!holds.getAsBoolean()) {
      try {
        Runnable next = screen.poll(100, TimeUnit.MILLISECONDS);
        if (next != null) {
          next.run();
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      assertTrue(System.nanoTime() < end, () -> "It did not come about: " + what + " " + page());
    }
  }

  MeasurePage page() {
    return model.page().get();
  }

  Running running() {
    return page().running().orElseThrow();
  }

  void begin(String stage, String watched) {
    model.begin(
        new SessionWish(
            "larkrise-01",
            stage,
            watched,
            Guide.Order.LISTED,
            OptionalInt.empty(),
            "Ines",
            List.of()));
    until("something is asked for", () -> running().sketch().isPresent());
  }

  void key(String letters) {
    letters.chars().forEach(letter -> model.session().typed(Character.toString(letter)));
  }

  void value(String text) {
    key(text);
    model.session().enter();
  }

  void untilBig(String big, Stands stands) {
    until(big, () -> running().big().equals(big) && running().bigStands() == stands);
  }

  JobLog log() {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.READ)) {
      return record.log(StoredJob.find(record, "larkrise-01"));
    }
  }
}
