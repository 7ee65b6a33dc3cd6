package datumpeg.desktop.chart;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.function.DoubleConsumer;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.fx.ChartViewer;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.SamplingXYLineRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * How long a hundred thousand points take: first draw, and a frame while they are moved along and
 * zoomed. Beside the sampling renderer of JFreeChart FX on the same numbers. Pulses follow each
 * other without a pause, so that the time between two is what a frame takes. Prints Markdown.
 */
public final class TrendBench {
  private static final int WARM_UP = 60;
  private static final int FRAMES = 300;

  private TrendBench() {}

  public static void main(String[] arguments) throws Exception {
    CompletableFuture<Void> started = new CompletableFuture<>();
    Platform.startup(() -> started.complete(null));
    started.get();
    Platform.setImplicitExit(false);
    System.out.printf(
        Locale.ROOT,
        "Commit %s · %s %s, %d processors · Java %s · JavaFX %s, pipeline %s%n%n"
            + "| points | drawn by | first draw ms | moved along: median ms | p95 ms | most ms |"
            + " zoomed: median ms | p95 ms | most ms | heap MB |%n|---|---|---|---|---|---|---|---|---|---|%n",
        System.getProperty("bench.commit", "unknown"),
        System.getProperty("os.name"),
        System.getProperty("os.arch"),
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("java.version"),
        System.getProperty("javafx.runtime.version"),
        System.getProperty("prism.order"));
    for (int round = 0; round < 5; round++) {
      for (int size : new int[] {100_000}) {
        run(size, "LongChart, with control and permitted limits and marks", ours(size));
        run(size, "JFreeChart FX, sampling renderer alone", theirs(size));
      }
    }
    Platform.exit();
  }

  private static double[] values(int size) {
    Random random = new Random(20260302);
    double[] values = new double[size];
    Arrays.setAll(values, i -> 2 * random.nextGaussian() + 3 * Math.sin(i * 1e-3));
    return values;
  }

  /** A chart, made on the JavaFX thread, and how a part of the points is brought into view. */
  private record Candidate(Parent node, java.util.function.BiConsumer<Double, Double> look) {}

  private interface Making {
    Candidate make();
  }

  private static Making ours(int size) {
    double[] values = values(size);
    return () -> {
      LongChart chart = new LongChart();
      ChartPoints points =
          ChartPoints.of(size, i -> values[i])
              .bars(i -> 1)
              .permitted(i -> -10, i -> 10)
              .control(0, i -> -6, i -> 6)
              .marks(i -> Math.abs(values[i]) > 6 ? Mark.BEYOND : Mark.PLAIN)
              .build();
      ChartLabels labels =
          new ChartLabels(
              "mm", "control limit", "centre line", "permitted", i -> "day " + i, i -> "point");
      chart.show(points, labels, "bench");
      return new Candidate(
          chart,
          (from, width) -> {
            chart.showAll();
            chart.zoom(size / width);
            chart.move((from + width / 2 - size / 2.0) / width);
          });
    };
  }

  private static Making theirs(int size) {
    double[] values = values(size);
    return () -> {
      XYSeries series = new XYSeries("bench", false, true);
      for (int i = 0; i < size; i++) {
        series.add(i, values[i], false);
      }
      NumberAxis across = new NumberAxis("point");
      across.setRange(0, size);
      NumberAxis up = new NumberAxis("mm");
      up.setRange(-14, 14);
      XYPlot plot =
          new XYPlot(new XYSeriesCollection(series), across, up, new SamplingXYLineRenderer());
      ChartViewer viewer = new ChartViewer(new JFreeChart(null, null, plot, false));
      return new Candidate(
          viewer, (from, width) -> plot.getDomainAxis().setRange(from, from + width));
    };
  }

  private static void run(int size, String name, Making making) throws Exception {
    Stage stage = on(Stage::new);
    System.gc();
    double before = heap();
    CompletableFuture<Double> drawn = new CompletableFuture<>();
    CompletableFuture<Candidate> made = new CompletableFuture<>();
    Platform.runLater(
        () -> {
          StackPane root = new StackPane();
          stage.setScene(new Scene(root, 1280, 800));
          stage.show();
          after(
              3,
              nothing -> {
                long start = System.nanoTime();
                Candidate candidate = making.make();
                root.getChildren().add(candidate.node());
                after(
                    2,
                    again -> {
                      drawn.complete(1e-6 * (System.nanoTime() - start));
                      made.complete(candidate);
                    });
              });
        });
    double first = drawn.get();
    Candidate candidate = made.get();
    double half = size / 2.0;
    double[] moved =
        frames(i -> candidate.look().accept(half * (1 + Math.sin(i * 0.05)) / 2, half));
    double[] zoomed =
        frames(
            i -> {
              double width = size * (0.02 + 0.49 * (1 + Math.cos(i * 0.05)));
              candidate.look().accept(half - width / 2, width);
            });
    System.gc();
    double heap = heap() - before;
    System.out.printf(
        Locale.ROOT,
        "| %d | %s | %.0f | %.1f | %.1f | %.1f | %.1f | %.1f | %.1f | %.0f |%n",
        size, name, first,
        moved[FRAMES / 2], moved[(int) (0.95 * FRAMES)], moved[FRAMES - 1],
        zoomed[FRAMES / 2], zoomed[(int) (0.95 * FRAMES)], zoomed[FRAMES - 1],
        heap);
    on(
        () -> {
          stage.close();
          return true;
        });
  }

  private static double heap() {
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) / 1e6;
  }

  /** Sorted times of frames in each of which something changes, in ms. */
  private static double[] frames(DoubleConsumer change) throws Exception {
    CompletableFuture<double[]> done = new CompletableFuture<>();
    Platform.runLater(
        () ->
            new AnimationTimer() {
              private final double[] times = new double[FRAMES];
              private int frame = -WARM_UP;
              private long last;

              @Override
              public void handle(long now) {
                long time = System.nanoTime();
                if (frame > 0) {
                  times[frame - 1] = 1e-6 * (time - last);
                }
                last = time;
                if (frame == FRAMES) {
                  stop();
                  Arrays.sort(times);
                  done.complete(times);
                  return;
                }
                change.accept(frame + WARM_UP);
                frame++;
              }
            }.start());
    return done.get();
  }

  private static void after(int pulses, DoubleConsumer then) {
    new AnimationTimer() {
      private int left = pulses;

      @Override
      public void handle(long now) {
        if (left-- == 0) {
          stop();
          then.accept(0);
        }
      }
    }.start();
  }

  private static <T> T on(java.util.concurrent.Callable<T> work) throws Exception {
    CompletableFuture<T> done = new CompletableFuture<>();
    Platform.runLater(
        () -> {
          try {
            done.complete(work.call());
          } catch (Exception e) {
            done.completeExceptionally(e);
          }
        });
    return done.get();
  }
}
