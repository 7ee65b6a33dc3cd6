package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireDistinct;
import static datumpeg.analysis.adjust.Door.requireKnown;
import static datumpeg.analysis.adjust.Door.requireNotNegative;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Points in one plane and whatever distances were taken between them; any shape, repeats allowed.
 *
 * <p>Datum: the origin at (0, 0) and the axis point at y = 0. Distances know neither place nor
 * direction, so these three fixed coordinates are the fewest that can be fixed and strain nothing:
 * residuals, adjusted distances, angles, their uncertainties and all tests are those of the free
 * network, whichever two points are named (W. Baarda, S-transformations and criterion matrices,
 * 1973, recalled; a test holds it). Only coordinates and their covariance belong to the datum.
 *
 * <p>What is read is the mark that stands for a point. How far a mark is beside its point
 * (definitional uncertainty, VIM 2.27) is the same in all readings of it: it moves no residual and
 * no test, and is added to the covariance of the points once, along x and y alike.
 *
 * @param origin name of one of the points
 * @param axis name of another
 * @param approximate where each point ought to be; also says on which side of a line it lies
 * @param distances between those points, with distinct observation ids
 * @param definitionsMetres by point: standard uncertainty of where the mark stands for it, in each
 *     direction; 0 for a point that is not named
 */
public record DistanceNetwork(
    String origin,
    String axis,
    List<PlanPoint> approximate,
    List<MeasuredDistance> distances,
    Map<String, Double> definitionsMetres) {
  public DistanceNetwork {
    definitionsMetres = Map.copyOf(definitionsMetres);
    definitionsMetres.forEach(
        (point, definition) ->
            requireNotNegative("mark of", point, "definitional uncertainty", definition));
    approximate = List.copyOf(approximate);
    distances = List.copyOf(distances);
    List<String> names = approximate.stream().map(PlanPoint::name).toList();
    requireDistinct("plan points", names);
    requireDistinct("distances", distances, one -> one.observation().id());
    requireKnown("origin of", "distance network", origin, names);
    requireKnown("axis point of", "distance network", axis, names);
    if (origin.equals(axis)) {
      throw new IllegalArgumentException(
          "distance network: origin and axis point are both " + origin + ", expected two points");
    }
    for (MeasuredDistance measured : distances) {
      requireKnown("distance", measured.observation().id(), measured.from(), names);
      requireKnown("distance", measured.observation().id(), measured.to(), names);
    }
    requireApart(approximate);
  }

  /** Points nearer than this share of the figure's size are one. */
  private static final double SAME_PLACE = 1e-6;

  /** Points that are their marks. */
  public DistanceNetwork(
      String origin, String axis, List<PlanPoint> approximate, List<MeasuredDistance> distances) {
    this(origin, axis, approximate, distances, Map.of());
  }

  private static void requireApart(List<PlanPoint> points) {
    double size = 0;
    for (PlanPoint one : points) {
      for (PlanPoint other : points) {
        size = Math.max(size, one.distanceTo(other));
      }
    }
    for (int i = 0; i < points.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (points.get(i).distanceTo(points.get(j)) <= 1e-9 * size) {
          throw new IllegalArgumentException(
              "distance network: "
                  + points.get(j).name()
                  + " and "
                  + points.get(i).name()
                  + " are in the same approximate place, expected distinct places");
        }
      }
    }
  }

  /** Adjusts all distances together. */
  public Adjustment<AdjustedPlan> adjust() {
    PlanState start = PlanState.inDatum(origin, axis, approximate);
    PlanSolver.Attempt attempt = PlanSolver.solve(start, distances);
    if (attempt.fit().isEmpty()) {
      return unsettled(attempt.state());
    }
    Optional<Adjustment<AdjustedPlan>> fallen = fallenTogether(attempt.state());
    if (fallen.isPresent()) {
      return fallen.get();
    }
    AdjustedPlan plan =
        AdjustedPlan.of(attempt.state(), attempt.fit().get(), distances, definitionsMetres);
    List<String> weak = plan.marks().weakPoints();
    return weak.isEmpty() ? new Adjusted<>(plan) : weak(plan, weak);
  }

  /** Distances may fit best where two points are one, which no slab has and no direction joins. */
  private Optional<Adjustment<AdjustedPlan>> fallenTogether(PlanState state) {
    double size = 0;
    for (PlanPoint one : approximate) {
      size = Math.max(size, one.distanceTo(approximate.get(0)));
    }
    for (int i = 0; i < approximate.size(); i++) {
      for (int j = 0; j < i; j++) {
        String one = approximate.get(j).name();
        String other = approximate.get(i).name();
        if (state.distance(one, other) <= SAME_PLACE * size) {
          return Optional.of(
              new Undetermined<>(
                  List.of(one, other),
                  one
                      + " and "
                      + other
                      + " fall on one place in the figure that fits the "
                      + distances.size()
                      + " distances best",
                  List.of(),
                  Optional.empty()));
        }
      }
    }
    return Optional.empty();
  }

  /** No solution: points may move freely, or hang on a distance that barely holds them. */
  private Adjustment<AdjustedPlan> unsettled(PlanState state) {
    LinearModel model = state.linearised(distances);
    Optional<Fit> fit = LeastSquares.adjust(model).complete();
    if (fit.isEmpty()) {
      return loose(state, NullSpace.of(model.design()));
    }
    AdjustedPlan plan =
        AdjustedPlan.of(state, fit.get().withValues(state.values()), distances, definitionsMetres);
    List<String> weak = plan.marks().weakPoints();
    return weak.isEmpty()
        ? new Undetermined<>(
            without(List.of()),
            "no figure near the drawing fits the " + distances.size() + " distances",
            List.of(),
            Optional.empty())
        : weak(plan, weak);
  }

  private Adjustment<AdjustedPlan> loose(PlanState state, NullSpace free) {
    List<String> largest = new RigidParts(state, free).largest();
    List<String> fixed = largest.size() < 2 ? List.of() : largest;
    List<String> loose = without(fixed);
    return new Undetermined<>(
        loose,
        distances.size()
            + " distances do not fix "
            + String.join(", ", loose)
            + (fixed.isEmpty() ? "" : " against " + String.join(", ", fixed)),
        new MissingDistances(state).toFix(free),
        part(fixed));
  }

  private Adjustment<AdjustedPlan> weak(AdjustedPlan plan, List<String> weak) {
    return new Undetermined<>(
        weak,
        distances.size()
            + " distances hold "
            + String.join(", ", weak)
            + " too weakly: these points lie so near the line through the points they were measured"
            + " from that their side of it is open",
        MissingDistances.toStiffen(plan.marks(), weak).map(List::of).orElse(List.of()),
        part(without(weak)));
  }

  private List<String> without(Collection<String> names) {
    return approximate.stream().map(PlanPoint::name).filter(name -> !names.contains(name)).toList();
  }

  /** The solution of some of the points, with the distances among them. */
  private Optional<AdjustedPlan> part(List<String> names) {
    if (names.size() < 2 || names.size() == approximate.size()) {
      return Optional.empty();
    }
    String first = names.contains(origin) ? origin : names.get(0);
    String second =
        names.contains(axis) && !axis.equals(first)
            ? axis
            : names.get(names.get(0).equals(first) ? 1 : 0);
    return new DistanceNetwork(
            first,
            second,
            approximate.stream().filter(point -> names.contains(point.name())).toList(),
            distances.stream()
                .filter(d -> names.contains(d.from()) && names.contains(d.to()))
                .toList(),
            definitionsMetres)
        .adjust()
        .available();
  }
}
