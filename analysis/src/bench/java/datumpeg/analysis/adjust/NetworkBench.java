package datumpeg.analysis.adjust;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * How long a distance network takes (processor time of the one thread) and how much memory it asks for, from 10 to 300 points with five
 * distances a point, beside a general optimiser on the same numbers. Prints Markdown.
 */
public final class NetworkBench {
  private static final int RUNS = 30;
  private static final int MOST_POINTS_BESIDE = 80;

  private NetworkBench() {}

  public static void main(String[] arguments) {
    System.out.printf(
        "%n| points | distances | median ms | p95 ms | MB asked for | next distance, ms |"
            + " the same, nothing checked | mirror images, ms | Levenberg-Marquardt, median ms |"
            + " largest difference, m |%n|---|---|---|---|---|---|---|---|---|---|%n");
    List<MeasuredDistance> warm = distances(points(40), 0);
    for (int i = 0; i < 40; i++) {
      adjusted(points(40), warm);
    }
    for (int points : new int[] {10, 20, 40, 60, 80, 160, 300}) {
      row(points);
    }
  }

  private static void row(int size) {
    List<PlanPoint> points = points(size);
    double[] times = new double[size > 100 ? 5 : RUNS];
    double[] others = new double[times.length];
    double megabytes = 0;
    double apart = 0;
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    for (int run = 0; run < times.length; run++) {
      List<MeasuredDistance> taken = distances(points, run);
      long bytes = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
      long start = processorNanoseconds();
      AdjustedPlan plan = adjusted(points, taken);
      times[run] = 1e-6 * (processorNanoseconds() - start);
      megabytes =
          1e-6 * (threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - bytes);
      if (size <= MOST_POINTS_BESIDE) {
        start = processorNanoseconds();
        double[] found = optimum(points, taken);
        others[run] = 1e-6 * (processorNanoseconds() - start);
        apart = Math.max(apart, apart(plan, found));
      }
    }
    boolean beside = size <= MOST_POINTS_BESIDE;
    System.out.printf(
        Locale.ROOT,
        "| %d | %d | %.1f | %.1f | %.1f | %.1f | %.1f | %.1f | %s | %s |%n",
        size,
        distances(points, 0).size(),
        share(times, 0.5),
        share(times, 0.95),
        megabytes,
        next(points, distances(points, 99)),
        next(points, unchecked(points)),
        mirrors(points),
        beside ? String.format(Locale.ROOT, "%.1f", share(others, 0.5)) : "",
        beside ? String.format(Locale.ROOT, "%.0e", apart) : "");
  }

  private static AdjustedPlan adjusted(List<PlanPoint> points, List<MeasuredDistance> taken) {
    return new DistanceNetwork(points.get(0).name(), points.get(1).name(), points, taken)
        .adjust()
        .complete()
        .orElseThrow();
  }

  private static double next(List<PlanPoint> points, List<MeasuredDistance> taken) {
    AdjustedPlan plan = adjusted(points, taken);
    List<NextMeasurement.Candidate> candidates = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      for (int j = 0; j < i; j++) {
        candidates.add(
            new NextMeasurement.Candidate(
                new PointPair(points.get(j).name(), points.get(i).name()),
                Observation.independent("next", 1, 0.001)));
      }
    }
    long start = processorNanoseconds();
    NextMeasurement.among(plan, candidates);
    return 1e-6 * (processorNanoseconds() - start);
  }

  /** Each point from two of three corners, near a right angle apart: nothing is checked. */
  private static List<MeasuredDistance> unchecked(List<PlanPoint> points) {
    int wide = (int) Math.ceil(Math.sqrt(points.size()));
    PlanPoint origin = points.get(0);
    PlanPoint right = points.get(wide - 1);
    PlanPoint top = points.get((points.size() - 1) / wide * wide);
    List<MeasuredDistance> taken = new ArrayList<>();
    taken.add(distance(origin, right));
    taken.add(distance(origin, top));
    taken.add(distance(right, top));
    List<List<PlanPoint>> bases =
        List.of(List.of(origin, right), List.of(origin, top), List.of(right, top));
    for (PlanPoint at : points) {
      if (!List.of(origin, right, top).contains(at)) {
        bases.stream()
            .min(Comparator.comparingDouble(base -> flatness(at, base.get(0), base.get(1))))
            .orElseThrow()
            .forEach(base -> taken.add(distance(base, at)));
      }
    }
    return taken;
  }

  /** |cos| of the angle at a point. */
  private static double flatness(PlanPoint at, PlanPoint one, PlanPoint other) {
    double dot =
        (one.xMetres() - at.xMetres()) * (other.xMetres() - at.xMetres())
            + (one.yMetres() - at.yMetres()) * (other.yMetres() - at.yMetres());
    return Math.abs(dot) / (at.distanceTo(one) * at.distanceTo(other));
  }

  private static MeasuredDistance distance(PlanPoint from, PlanPoint to) {
    return new MeasuredDistance(
        from.name(),
        to.name(),
        Observation.independent(from.name() + "-" + to.name(), from.distanceTo(to), 0.001));
  }

  private static double mirrors(List<PlanPoint> points) {
    AdjustedPlan plan = adjusted(points, distances(points, 99));
    long start = processorNanoseconds();
    plan.mirrorAmbiguities();
    return 1e-6 * (processorNanoseconds() - start);
  }

  private static long processorNanoseconds() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static double share(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  }

  /** A loose grid, 5 m apart; invented. */
  private static List<PlanPoint> points(int size) {
    SplittableRandom random = new SplittableRandom(size);
    int wide = (int) Math.ceil(Math.sqrt(size));
    List<PlanPoint> points = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      points.add(
          new PlanPoint(
              "P" + i,
              5 * (i % wide) + random.nextDouble(-1, 1),
              5 * (i / wide) + random.nextDouble(-1, 1)));
    }
    return points;
  }

  /** To the nearest points first, so that all hang together, then to any. */
  private static List<MeasuredDistance> distances(List<PlanPoint> points, int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double zero = 0.0005 * random.nextGaussian();
    Set<PointPair> pairs = new LinkedHashSet<>();
    for (int i = 1; i < points.size(); i++) {
      PlanPoint from = points.get(i);
      points.subList(0, i).stream()
          .sorted((a, b) -> Double.compare(a.distanceTo(from), b.distanceTo(from)))
          .limit(3)
          .forEach(to -> pairs.add(new PointPair(to.name(), from.name())));
    }
    while (pairs.size() < Math.min(5 * points.size(), points.size() * (points.size() - 1) / 2)) {
      int i = random.nextInt(points.size());
      int j = random.nextInt(points.size());
      if (i != j) {
        pairs.add(
            new PointPair(points.get(Math.min(i, j)).name(), points.get(Math.max(i, j)).name()));
      }
    }
    List<MeasuredDistance> distances = new ArrayList<>();
    for (PointPair pair : pairs) {
      double length = point(points, pair.first()).distanceTo(point(points, pair.second()));
      distances.add(
          new MeasuredDistance(
              pair.first(),
              pair.second(),
              new Observation(
                  pair.first() + "-" + pair.second(),
                  length + zero + 0.001 * random.nextGaussian(),
                  0.001,
                  List.of(
                      new CommonPart("zero", 0.0005), new CommonPart("scale", 3e-5 * length)))));
    }
    return distances;
  }

  private static PlanPoint point(List<PlanPoint> points, String name) {
    return points.get(Integer.parseInt(name.substring(1)));
  }

  /** The same unknowns, with the shared errors among them, each observed to be 0 ± 1. */
  private static double[] optimum(List<PlanPoint> points, List<MeasuredDistance> taken) {
    PlanState start = PlanState.inDatum("P0", "P1", points);
    int u = start.unknowns().size();
    Optimum optimum =
        new LevenbergMarquardtOptimizer()
            .withCostRelativeTolerance(1e-12)
            .withParameterRelativeTolerance(1e-12)
            .optimize(
                new LeastSquaresBuilder()
                    .start(Arrays.copyOf(start.values(), u + 2))
                    .model(vector -> evaluated(start, vector, taken))
                    .target(new double[taken.size() + 2])
                    .maxEvaluations(100)
                    .maxIterations(100)
                    .build());
    optimum.getCovariances(1e-14);
    return optimum.getPoint().toArray();
  }

  private static Pair<RealVector, RealMatrix> evaluated(
      PlanState start, RealVector vector, List<MeasuredDistance> taken) {
    double[] now = vector.toArray();
    double[] before = start.values();
    int u = before.length;
    double[] corrections = new double[u];
    for (int j = 0; j < u; j++) {
      corrections[j] = now[j] - before[j];
    }
    PlanState state = start.moved(corrections, 1);
    RealVector residuals = new ArrayRealVector(taken.size() + 2);
    RealMatrix slopes = MatrixUtils.createRealMatrix(taken.size() + 2, u + 2);
    for (int i = 0; i < taken.size(); i++) {
      MeasuredDistance distance = taken.get(i);
      Observation observation = distance.observation();
      double own = observation.independentStandardUncertainty();
      double zero = observation.effect("zero");
      double scale = observation.effect("scale");
      residuals.setEntry(
          i,
          (state.distance(distance.from(), distance.to())
                  + zero * now[u]
                  + scale * now[u + 1]
                  - observation.observed())
              / own);
      double[] gradient = state.gradient(distance.from(), distance.to());
      for (int j = 0; j < u; j++) {
        slopes.setEntry(i, j, gradient[j] / own);
      }
      slopes.setEntry(i, u, zero / own);
      slopes.setEntry(i, u + 1, scale / own);
    }
    for (int g = 0; g < 2; g++) {
      residuals.setEntry(taken.size() + g, now[u + g]);
      slopes.setEntry(taken.size() + g, u + g, 1);
    }
    return new Pair<>(residuals, slopes);
  }

  private static double apart(AdjustedPlan plan, double[] found) {
    double largest = 0;
    List<String> unknowns = plan.fit().parameters().names();
    for (int j = 0; j < unknowns.size(); j++) {
      largest =
          Math.max(largest, Math.abs(found[j] - plan.fit().parameters().value(unknowns.get(j))));
    }
    return largest;
  }
}
