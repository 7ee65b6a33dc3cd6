package datumpeg.desktop.app;

import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.source.SiteRecordOpening;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.ListView;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;

/**
 * How soon the window is usable with a large record, and how long its pulses last. Each start is a
 * process of its own. Prints Markdown. Run by {@code desktop-ui/src/bench/scripts/window.sh}.
 * Arguments: {@code run FOLDER JOB.toml JOBS READINGS RUNS}.
 */
public final class WindowBench {
  private static final double PULSE_MILLISECONDS = 1000.0 / 60;
  private static final int PULSES_OF_A_SCREEN = 1200;
  private static final String OVER_JOBS = "trend-over-jobs";

  private WindowBench() {}

  public static void main(String[] arguments) throws Exception {
    switch (arguments[0]) {
      case "run" -> run(arguments);
      case "fill" ->
          LargeRecord.fill(
              Path.of(arguments[1]),
              Path.of(arguments[2]),
              Integer.parseInt(arguments[3]),
              Integer.parseInt(arguments[4]));
      case "empty" -> empty();
      case "settle" -> settle(Path.of(arguments[1]), Integer.parseInt(arguments[2]));
      case "window" -> window(Path.of(arguments[1]), Integer.parseInt(arguments[2]));
      case "pulses" -> pulses(Path.of(arguments[1]), Integer.parseInt(arguments[2]));
      default -> throw new IllegalArgumentException(arguments[0]);
    }
    System.exit(0);
  }

  private static void run(String[] arguments) throws IOException, InterruptedException {
    Path file = Path.of(arguments[1]).resolve("large.db");
    String jobs = arguments[3];
    int runs = Integer.parseInt(arguments[5]);
    System.out.printf(
        "%nCommit %s · %s %s, %d processors, load %.1f · Java %s · %s%n%n",
        System.getProperty("bench.commit", "unknown"),
        System.getProperty("os.name"),
        System.getProperty("os.arch"),
        Runtime.getRuntime().availableProcessors(),
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
        System.getProperty("java.version"),
        OffsetDateTime.now(ZoneOffset.UTC).withNano(0));
    if (!Files.exists(file)) {
      child("fill", file.toString(), arguments[2], jobs, arguments[4]);
      System.out.println(asShipped("settle", file.toString(), jobs));
    }
    double[] empty = new double[runs];
    double[] emptyAsShipped = new double[runs];
    double[] window = new double[runs];
    for (int i = 0; i < runs; i++) {
      empty[i] = number(child("empty"));
      emptyAsShipped[i] = number(asShipped("empty"));
      window[i] = number(asShipped("window", file.toString(), jobs));
    }
    System.out.printf(
        Locale.ROOT,
        "| from the start of Java to | median ms | least | most | runs |%n|---|---|---|---|---|%n");
    row("the first paint of an empty JavaFX window", empty);
    row("the same with the compiler and the archive of classes that the launcher gives the window", emptyAsShipped);
    row("the jobs on screen, usable", window);
    System.out.printf(
        Locale.ROOT,
        "%nRatio of the medians: %.2f to the first, %.2f to the second%n%n",
        median(window) / median(empty),
        median(window) / median(emptyAsShipped));
    System.out.print(asShipped("pulses", file.toString(), jobs));
  }

  private static void row(String what, double[] times) {
    double[] sorted = times.clone();
    Arrays.sort(sorted);
    System.out.printf(
        Locale.ROOT,
        "| %s | %.0f | %.0f | %.0f | %d |%n",
        what, median(times), sorted[0], sorted[sorted.length - 1], times.length);
  }

  private static double median(double[] times) {
    double[] sorted = times.clone();
    Arrays.sort(sorted);
    return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
  }

  private static double number(String printed) {
    return Double.parseDouble(printed.strip());
  }

  private static String child(String... arguments) throws IOException, InterruptedException {
    return child(List.of(), arguments);
  }

  /** With what {@code ./datumpeg desktop} adds from its second start on. */
  private static String asShipped(String... arguments) throws IOException, InterruptedException {
    return child(List.of(System.getProperty("bench.options", "-Xshare:auto").split(" ")), arguments);
  }

  /** Another Java with the same class path and toolkit. */
  private static String child(List<String> options, String... arguments)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(ManagementFactory.getRuntimeMXBean().getInputArguments());
    command.addAll(options);
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add(WindowBench.class.getName());
    command.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    try (InputStream out = process.getInputStream()) {
      String printed = new String(out.readAllBytes(), StandardCharsets.UTF_8);
      if (process.waitFor() != 0) {
        throw new IllegalStateException(Arrays.toString(arguments) + " failed: " + printed);
      }
      return printed;
    }
  }

  private static double sinceStart() {
    return System.currentTimeMillis() - ManagementFactory.getRuntimeMXBean().getStartTime();
  }

  private static void empty() throws InterruptedException {
    CountDownLatch painted = new CountDownLatch(1);
    Platform.startup(
        () -> {
          Stage stage = new Stage();
          stage.setScene(new Scene(new Pane(), 1280, 800));
          stage.show();
          afterPulses(2, painted::countDown);
        });
    painted.await();
    System.out.println(sinceStart());
  }

  private static LiveWindow open(Path file, Stage stage) {
    LiveWindow window =
        new LiveWindow(
            file.toString(),
            new SiteRecordOpening(file),
            "",
            new SettingsFile(file.resolveSibling("bench.settings")),
            Clock.systemUTC(),
            ZoneOffset.UTC);
    window.openOn(stage);
    return window;
  }

  /** Usable: every job is in the list, and the pulse that drew it is over. */
  private static void window(Path file, int jobs) throws InterruptedException {
    forgetWhatWasShown(file);
    CountDownLatch usable = new CountDownLatch(1);
    Platform.startup(
        () -> {
          Stage stage = new Stage();
          open(file, stage);
          when(() -> listed(stage) == jobs, () -> afterPulses(2, usable::countDown));
        });
    usable.await();
    System.out.println(sinceStart());
  }

  /** What was shown last is not to be shown: the list of jobs is what is measured. */
  private static void forgetWhatWasShown(Path file) {
    try {
      Files.deleteIfExists(file.resolveSibling("bench.settings"));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static int listed(Stage stage) {
    return stage.getScene().lookup("#jobs") instanceof ListView<?> list
        ? list.getItems().size()
        : 0;
  }

  /** Works every job out once, as the first window on such a record does in the background. */
  private static void settle(Path file, int jobs) {
    long begin = System.nanoTime();
    try (var source = new SiteRecordOpening(file).open()) {
      source.jobs().forEach(row -> source.overview(row));
      long settled = source.jobs().stream().filter(row -> row.current()).count();
      System.out.printf(
          Locale.ROOT,
          "%d of %d jobs worked out for the first time in %.0f s; %.0f MB of record, %.1f MB kept.%n",
          settled,
          jobs,
          (System.nanoTime() - begin) / 1e9,
          size(file) / 1e6,
          size(file.resolveSibling(file.getFileName() + ".outcomes")) / 1e6);
    }
  }

  private static double size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Delays of pulses on every screen: from its first paint on, while keys are pressed in it. */
  private static void pulses(Path file, int jobs) throws Exception {
    forgetWhatWasShown(file);
    CompletableFuture<Stage> ready = new CompletableFuture<>();
    CompletableFuture<LiveWindow> opened = new CompletableFuture<>();
    Platform.startup(
        () -> {
          Stage stage = new Stage();
          opened.complete(open(file, stage));
          when(() -> listed(stage) == jobs, () -> afterPulses(2, () -> ready.complete(stage)));
        });
    Stage stage = ready.get();
    System.out.println("| screen | pulses | p50 ms | p99.9 ms | longest ms |\n|---|---|---|---|---|");
    for (String screen : wanted()) {
      CompletableFuture<double[]> measured = new CompletableFuture<>();
      Platform.runLater(
          () -> {
            turnTo(screen, stage, opened.join());
            afterPulses(3, () -> measure(screen, stage, measured));
          });
      double[] sorted = measured.get();
      Arrays.sort(sorted);
      System.out.printf(
          Locale.ROOT,
          "| %s | %d | %.1f | %.1f | %.1f |%n",
          screen,
          sorted.length,
          sorted[sorted.length / 2],
          sorted[(int) Math.ceil(0.999 * sorted.length) - 1],
          sorted[sorted.length - 1]);
    }
  }

  /** All screens, trend both of a job and over jobs; or with {@code -Dbench.screens=ID,ID} those. */
  private static List<String> wanted() {
    List<String> ids = List.of(System.getProperty("bench.screens", "").split(","));
    return Arrays.stream(Screen.values())
        .map(Screen::id)
        .flatMap(id -> id.equals("trend") ? Stream.of(id, OVER_JOBS) : Stream.of(id))
        .filter(id -> ids.contains("") || ids.contains(id))
        .toList();
  }

  private static void turnTo(String screen, Stage stage, LiveWindow window) {
    boolean overJobs = screen.equals(OVER_JOBS);
    window.window().window().screen().set(Screen.ofId(overJobs ? "trend" : screen).orElseThrow());
    if (overJobs && stage.getScene().lookup("#" + OVER_JOBS) instanceof ToggleButton button) {
      button.fire();
      afterPulses(2, stage.getScene().lookup("#" + OVER_JOBS)::requestFocus);
    }
  }

  /** From pulse to pulse, less what lies between two pulses anyway. */
  private static void measure(
      String screen, Stage stage, CompletableFuture<double[]> measured) {
    double[] delays = new double[PULSES_OF_A_SCREEN];
    new AnimationTimer() {
      private int count = -1;
      private long before;

      @Override
      public void handle(long now) {
        long at = System.nanoTime();
        if (count >= 0) {
          delays[count] = Math.max(0, (at - before) / 1e6 - PULSE_MILLISECONDS);
          tellIfLong(screen, count, delays[count]);
        }
        before = at;
        count++;
        if (count == delays.length) {
          stop();
          measured.complete(delays);
        } else if (count % 20 == 10) {
          press(stage, count % 400 < 200 ? KeyCode.DOWN : KeyCode.UP);
        }
      }
    }.start();
  }

  /** With {@code -Dbench.long=MILLISECONDS}: which pulses last longer, and when, in seconds. */
  private static void tellIfLong(String screen, int pulse, double milliseconds) {
    if (milliseconds > Double.parseDouble(System.getProperty("bench.long", "Infinity"))) {
      System.err.printf(
          Locale.ROOT,
          "%.3f %s pulse %d: %.1f ms%n",
          sinceStart() / 1000,
          screen,
          pulse,
          milliseconds);
    }
  }

  private static void press(Stage stage, KeyCode key) {
    var focused = stage.getScene().getFocusOwner();
    if (focused != null) {
      focused.fireEvent(
          new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false));
    }
  }

  private static void afterPulses(int pulses, Runnable then) {
    new AnimationTimer() {
      private int left = pulses;

      @Override
      public void handle(long now) {
        if (left-- == 0) {
          stop();
          then.run();
        }
      }
    }.start();
  }

  private static void when(BooleanSupplier holds, Runnable then) {
    new AnimationTimer() {
      @Override
      public void handle(long now) {
        if (holds.getAsBoolean()) {
          stop();
          then.run();
        }
      }
    }.start();
  }
}
