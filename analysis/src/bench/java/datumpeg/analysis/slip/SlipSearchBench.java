package datumpeg.analysis.slip;

import datumpeg.analysis.adjust.Fit;
import datumpeg.analysis.adjust.GlobalTest;
import datumpeg.analysis.simulate.NormalDraws;
import java.lang.management.ManagementFactory;
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
    PlantedSlips.all().forEach((name, slips) -> share(name, SlipShares.of(slips, seeds, 1)));
    PlantedSlips.pairs().forEach((name, slips) -> share(name, SlipShares.of(slips, seeds, 1)));
  }

  private static void share(String name, SlipShares shares) {
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %s | %s | %s |%n",
        name,
        percent(shares.seen(), shares.seeds()),
        percent(shares.first(), shares.seen()),
        percent(shares.firstTwo(), shares.seen()),
        percent(shares.readingFirst(), shares.seen()));
  }

  private static String percent(int part, int of) {
    return of == 0 ? "-" : String.format(Locale.ROOT, "%.1f %%", 100.0 * part / of);
  }

  private static void falseAlarms(int seeds) {
    int doubted = 0;
    int named = 0;
    for (long seed = 1; seed <= seeds; seed++) {
      SlipFindings found = PlantedDistances.cleanSlab(1_000_000 + seed).searched();
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
        "%n| distances | slips planted | slips tried | search, median ms | p95 ms | processor, most ms"
            + " | every slip adjusted again, median ms | same first |%n|---|---|---|---|---|---|---|---|%n");
    for (int slips = 1; slips <= 3; slips++) {
      for (int sets : new int[] {1, 2}) {
        time(sets, slips);
      }
    }
  }

  private static void time(int sets, int slips) {
    List<Double> searched = new ArrayList<>();
    List<Double> processor = new ArrayList<>();
    List<Double> brute = new ArrayList<>();
    int same = 0;
    int tried = 0;
    int fewer = slips == 1 ? sets * sets * sets : 1;
    int warmUp = WARM_UP / fewer;
    int timed = Math.max(3, TIMED / fewer);
    for (int i = 0; i < warmUp + timed; i++) {
      PlantedSlips.Planted planted = planted(sets, slips, i);
      long start = System.nanoTime();
      long spent = processorNanoseconds();
      SlipFindings found = planted.searched();
      spent = processorNanoseconds() - spent;
      long between = System.nanoTime();
      Optional<Slip> best = slips == 1 ? bruteForce(planted) : Optional.empty();
      long end = System.nanoTime();
      if (i >= warmUp) {
        searched.add((between - start) / 1e6);
        processor.add(spent / 1e6);
        brute.add((end - between) / 1e6);
        tried = found.tried();
        same += sameReadings(found, best) ? 1 : 0;
      }
    }
    System.out.printf(
        Locale.ROOT,
        "| %d | %d | %d | %.1f | %.1f | %.1f | %s | %s |%n",
        15 * sets,
        slips,
        tried,
        quantile(searched, 0.5),
        quantile(searched, 0.95),
        quantile(processor, 1),
        slips == 1 ? String.format(Locale.ROOT, "%.1f", quantile(brute, 0.5)) : "",
        slips == 1 ? same + " of " + timed : "");
  }

  private static long processorNanoseconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  /** A metre added to the fourth distance; besides, an odd amount to the eighth and the twelfth. */
  private static PlantedSlips.Planted planted(int sets, int slips, int seed) {
    List<SlipReading> readings = PlantedDistances.distances(new NormalDraws(seed), sets);
    List<String> ids = new ArrayList<>();
    for (int slip = 0; slip < slips; slip++) {
      SlipReading right = readings.get(3 + 4 * slip);
      readings.set(3 + 4 * slip, PlantedSlips.with(right, right.value() + (slip == 0 ? 1 : 0.37)));
      ids.add(right.id());
    }
    return new PlantedSlips.Planted(
        PlantedDistances.network(readings), readings, SlipKind.WHOLE_UNIT, ids);
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
