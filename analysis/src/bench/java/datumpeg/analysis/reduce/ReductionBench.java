package datumpeg.analysis.reduce;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;

/** How long a three-bay job takes, all stages and checks, warm. Prints Markdown. */
public final class ReductionBench {
  private static final int WARM_UP = 600;
  private static final int RUNS = 200;
  private static final int SURVEYS = 20;

  private ReductionBench() {}

  public static void main(String[] arguments) {
    Job job = SimulatedSurvey.job();
    List<List<Reading>> surveys =
        LongStream.range(0, SURVEYS)
            .mapToObj(seed -> SimulatedSurvey.draw(job, seed).readings())
            .toList();
    double[] times = new double[RUNS];
    int outcomes = 0;
    for (int run = -WARM_UP; run < RUNS; run++) {
      List<Reading> readings = surveys.get(Math.floorMod(run, SURVEYS));
      long start = System.nanoTime();
      Findings findings = new Reduction(job, "").reduce(readings, List.of());
      if (run >= 0) {
        times[run] = 1e-6 * (System.nanoTime() - start);
      }
      outcomes = findings.stages().stream().mapToInt(stage -> stage.outcomes().size()).sum();
    }
    Arrays.sort(times);
    System.out.printf(
        Locale.ROOT,
        "Commit %s · %s %s, %d processors · Java %s%n%n"
            + "| three bays, nine stages | readings | outcomes | median ms | p95 ms |%n"
            + "|---|---|---|---|---|%n| %d runs over %d surveys | %d | %d | %.1f | %.1f |%n",
        System.getProperty("bench.commit", "unknown"),
        System.getProperty("os.name"),
        System.getProperty("os.arch"),
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("java.version"),
        RUNS,
        SURVEYS,
        surveys.get(0).size(),
        outcomes,
        times[RUNS / 2],
        times[(int) (0.95 * RUNS)]);
  }
}
