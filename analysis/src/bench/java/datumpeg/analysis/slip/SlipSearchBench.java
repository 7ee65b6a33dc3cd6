package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.GlobalTest;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How often planted slips are found, and how long a search takes beside adjusting every slip again.
 * Prints Markdown. Argument: seeds a kind (default 500).
 */
public final class SlipSearchBench {
  private static final int WARM_UP = 40;
  private static final int TIMED = 60;

  private SlipSearchBench() {}

  public static void main(String[] arguments) {
    int seeds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 500;
    System.out.printf(
        "Commit %s · %s %s, %d processors · Java %s%n",
        System.getProperty("bench.commit", "unknown"),
        System.getProperty("os.name"),
        System.getProperty("os.arch"),
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("java.version"));
    if (seeds > 0) {
      shares(seeds);
      falseAlarms(10 * seeds);
    }
    times();
  }

  private static void shares(int seeds) {
    System.out.printf(
        "%n| planted (%d seeds) | seen | first | first or second | its reading first |%n"
            + "|---|---|---|---|---|%n",
        seeds);
    PlantedSlips.all()
        .forEach(
            (name, slips) -> {
              SlipShares shares = SlipShares.of(slips, seeds, 1);
              System.out.printf(
                  Locale.ROOT,
                  "| %s | %s | %s | %s | %s |%n",
                  name,
                  percent(shares.seen(), seeds),
                  percent(shares.first(), shares.seen()),
                  percent(shares.firstTwo(), shares.seen()),
                  percent(shares.readingFirst(), shares.seen()));
            });
  }

  private static String percent(int part, int of) {
    return of == 0 ? "-" : String.format(Locale.ROOT, "%.1f %%", 100.0 * part / of);
  }

  private static void falseAlarms(int seeds) {
    int doubted = 0;
    int named = 0;
    for (long seed = 1; seed <= seeds; seed++) {
      SlipFindings found = PlantedSlips.cleanSlab(1_000_000 + seed).searched();
      doubted += found.state() == SlipFindings.State.AGREES ? 0 : 1;
      named += found.suspicions().isEmpty() ? 0 : 1;
    }
    System.out.printf(
        Locale.ROOT,
        "%nClean slabs of 15 distances (%d seeds): doubted %s, a slip named %s.%n",
        seeds,
        percent(doubted, seeds),
        percent(named, seeds));
  }

  private static void times() {
    System.out.printf(
        "%n| distances | slips tried | search, median ms | p95 ms | every slip adjusted again,"
            + " median ms | p95 ms | same first |%n|---|---|---|---|---|---|---|%n");
    for (int sets : new int[] {1, 2}) {
      time(sets);
    }
  }

  private static void time(int sets) {
    List<Double> searched = new ArrayList<>();
    List<Double> brute = new ArrayList<>();
    int same = 0;
    int tried = 0;
    int fewer = sets * sets * sets;
    int warmUp = WARM_UP / fewer;
    int timed = Math.max(3, TIMED / fewer);
    for (int i = 0; i < warmUp + timed; i++) {
      PlantedSlips.Planted planted = planted(sets, i);
      long start = System.nanoTime();
      SlipFindings found = planted.searched();
      long between = System.nanoTime();
      Optional<Slip> best = bruteForce(planted);
      long end = System.nanoTime();
      if (i >= warmUp) {
        searched.add((between - start) / 1e6);
        brute.add((end - between) / 1e6);
        tried = found.tried();
        same += sameReadings(found, best) ? 1 : 0;
      }
    }
    System.out.printf(
        Locale.ROOT,
        "| %d | %d | %.1f | %.1f | %.1f | %.1f | %d of %d |%n",
        15 * sets,
        tried,
        quantile(searched, 0.5),
        quantile(searched, 0.95),
        quantile(brute, 0.5),
        quantile(brute, 0.95),
        same,
        timed);
  }

  /** A metre added to the fourth distance. */
  private static PlantedSlips.Planted planted(int sets, int seed) {
    List<SlipReading> readings = PlantedSlips.distances(new NormalDraws(seed), sets);
    SlipReading right = readings.get(3);
    SlipReading wrong =
        PlantedSlips.reading(right.id(), right.target(), right.value() + 1, 0, right.set());
    readings.set(3, wrong);
    return new PlantedSlips.Planted(
        PlantedSlips.network(readings), readings, SlipKind.WHOLE_UNIT, List.of(right.id()));
  }

  /** The named alternative: every slip tried by adjusting again. */
  private static Optional<Slip> bruteForce(PlantedSlips.Planted planted) {
    Fit fit = planted.network().fit(planted.network().observations()).orElseThrow();
    GlobalTest test = fit.test().orElseThrow();
    SlipTrial trial =
        new SlipTrial(
            planted.network(),
            test,
            fit.changeEffects(),
            planted.readings(),
            SlipOptions.USUAL);
    List<Suspicion> suspicions = new ArrayList<>();
    for (Slip slip : PossibleSlips.of(planted.readings(), SlipOptions.USUAL)) {
      trial.of(slip).ifPresent(suspicions::add);
    }
    return Ranking.of(suspicions).suspicions().stream().findFirst().map(Suspicion::slip);
  }

  private static boolean sameReadings(SlipFindings found, Optional<Slip> best) {
    return best.isPresent()
        && !found.suspicions().isEmpty()
        && found.suspicions().get(0).slip().words().equals(best.get().words());
  }

  private static double quantile(List<Double> values, double share) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  }
}
