package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.AdjustedPlan;
import datumpeg.analysis.building.Outline;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.conform.Decision;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.analysis.remedy.PlacementProblem;
import datumpeg.analysis.remedy.PlacementProblem.Facing;
import datumpeg.analysis.remedy.PlacementProblem.Pose;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Puts the rectangle of the line marks on the adjusted outline of the slab, and says how certain
 * the answer is: its change with each corner's place, by central differences, through the corners'
 * joint covariance.
 */
final class LinesOnSlab {
  private static final String SLAB_SIZE = "slab-size";

  private static final double DIFFERENCE_METRES = 1e-4;

  /** A mark so little beyond an edge's end still counts as beside it. */
  private static final double BESIDE_METRES = 0.5;

  private final Job job;
  private final Outline outline;
  private final Map<String, PlanPoint> marks = new LinkedHashMap<>();

  LinesOnSlab(Job job, Outline outline) {
    this.job = job;
    this.outline = outline;
    int n = job.setOut().building().portalFrameCount();
    for (String mark : List.of("A1", "A" + n, "B" + n, "B1")) {
      Position place = job.setOut().position(new PointName("line", mark, ""));
      marks.put(mark, new PlanPoint(place.xMetres(), place.yMetres()));
    }
  }

  /** The placement; empty unless every corner of the outline was adjusted. */
  Optional<LinePlacement> on(AdjustedPlan plan) {
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    for (String corner : outline.corners()) {
      String name = "slab." + corner;
      if (!plan.names().contains(name)) {
        return Optional.empty();
      }
      corners.put(corner, new PlanPoint(plan.x(name).value(), plan.y(name).value()));
    }
    List<Edge> edges = edges(corners);
    return problem(edges, corners)
        .solve(rough(corners))
        .map(pose -> placement(pose, edges, plan, corners));
  }

  private LinePlacement placement(
      Pose pose, List<Edge> edges, AdjustedPlan plan, Map<String, PlanPoint> corners) {
    double[] values = distances(edges, pose);
    List<Linearised> known = linearised(pose, values, plan, corners);
    List<LinePlacement.Offset> offsets = new ArrayList<>();
    int worst = 0;
    for (int i = 0; i < edges.size(); i++) {
      Edge edge = edges.get(i);
      offsets.add(
          new LinePlacement.Offset(
              edge.mark(),
              edge.name(),
              edge.plannedMetres(),
              values[i],
              known.get(i).estimate().standardUncertainty()));
      if (edge.plannedMetres() - values[i]
          > edges.get(worst).plannedMetres() - values[worst] + DIFFERENCE_METRES / 100) {
        worst = i;
      }
    }
    double shortMetres = edges.get(worst).plannedMetres() - values[worst];
    OptionalDouble allowed = allowed();
    return new LinePlacement(
        offsets,
        shortMetres,
        known.get(worst).estimate().standardUncertainty(),
        edges.get(worst).mark(),
        allowed,
        allowed.isPresent()
            ? Optional.of(decided(shortMetres, offsets, allowed))
            : Optional.empty());
  }

  private Decision.Decided decided(
      double shortMetres, List<LinePlacement.Offset> offsets, OptionalDouble allowed) {
    double u =
        offsets.stream()
            .mapToDouble(LinePlacement.Offset::standardUncertaintyMetres)
            .max()
            .orElseThrow();
    return new Decision(job.decision())
        .maximum(
            shortMetres, u, offsets.size(), new Limits(OptionalDouble.empty(), allowed, SLAB_SIZE));
  }

  /** A slab may be as much short as its own size may be. */
  private OptionalDouble allowed() {
    double length = job.setOut().building().lengthMetres();
    return job.tolerance(SLAB_SIZE)
        .map(tolerance -> tolerance.signed(length).lower())
        .filter(OptionalDouble::isPresent)
        .map(lower -> OptionalDouble.of(-lower.getAsDouble()))
        .orElse(OptionalDouble.empty());
  }

  /** Each offset as it depends on the adjusted corners: a corner so little moved is near enough. */
  private List<Linearised> linearised(
      Pose pose, double[] values, AdjustedPlan plan, Map<String, PlanPoint> corners) {
    Linearised zero = plan.x("slab." + outline.corners().get(0)).scaled(0);
    List<Linearised> offsets = new ArrayList<>(Collections.nCopies(values.length, zero));
    for (String corner : outline.corners()) {
      for (boolean along : new boolean[] {true, false}) {
        double[] more =
            near(pose, displaced(corners, corner, along, DIFFERENCE_METRES)).orElse(values);
        double[] less =
            near(pose, displaced(corners, corner, along, -DIFFERENCE_METRES)).orElse(values);
        Linearised coordinate = along ? plan.x("slab." + corner) : plan.y("slab." + corner);
        for (int i = 0; i < values.length; i++) {
          offsets.set(
              i,
              offsets
                  .get(i)
                  .plus(coordinate.scaled((more[i] - less[i]) / (2 * DIFFERENCE_METRES))));
        }
      }
    }
    return offsets;
  }

  private static Map<String, PlanPoint> displaced(
      Map<String, PlanPoint> corners, String corner, boolean along, double metres) {
    Map<String, PlanPoint> moved = new LinkedHashMap<>(corners);
    moved.computeIfPresent(
        corner,
        (name, place) ->
            new PlanPoint(
                place.xMetres() + (along ? metres : 0), place.yMetres() + (along ? 0 : metres)));
    return moved;
  }

  /** The distance of each edge's mark from it, in the best pose near one; empty if not held. */
  private Optional<double[]> near(Pose pose, Map<String, PlanPoint> corners) {
    List<Edge> edges = edges(corners);
    return problem(edges, corners).solveFromNear(pose).map(best -> distances(edges, best));
  }

  private PlacementProblem problem(List<Edge> edges, Map<String, PlanPoint> corners) {
    List<Facing> facings = new ArrayList<>(edges);
    facings.addAll(innerCorners(corners));
    return new PlacementProblem(facings, job.setOut().building().lengthMetres() / 2);
  }

  private static double[] distances(List<Edge> edges, Pose pose) {
    return edges.stream().mapToDouble(edge -> edge.distanceMetres(pose)).toArray();
  }

  /** A mark and an edge beside it. */
  private record Edge(String mark, String name, PlanPoint place, Line line, double plannedMetres)
      implements Facing {
    @Override
    public double distanceMetres(Pose pose) {
      return line.leftOf(moved(pose, place));
    }
  }

  /** An inner corner of the slab and the side of the rectangle it lies beside. */
  private record InnerCorner(PlanPoint corner, PlanPoint from, PlanPoint to, double plannedMetres)
      implements Facing {
    @Override
    public double distanceMetres(Pose pose) {
      return -new Line(moved(pose, from), moved(pose, to)).leftOf(corner);
    }
  }

  /** A directed line. */
  private record Line(PlanPoint from, PlanPoint to) {
    double leftOf(PlanPoint point) {
      double dx = to.xMetres() - from.xMetres();
      double dy = to.yMetres() - from.yMetres();
      double px = point.xMetres() - from.xMetres();
      double py = point.yMetres() - from.yMetres();
      return (dx * py - dy * px) / from.distanceMetres(to);
    }

    /** Whether the foot of a point lies on the line or a little beside its ends. */
    boolean isBeside(PlanPoint point) {
      double dx = to.xMetres() - from.xMetres();
      double dy = to.yMetres() - from.yMetres();
      double along =
          (dx * (point.xMetres() - from.xMetres()) + dy * (point.yMetres() - from.yMetres()))
              / from.distanceMetres(to);
      return along >= -BESIDE_METRES && along <= from.distanceMetres(to) + BESIDE_METRES;
    }
  }

  private static PlanPoint moved(Pose pose, PlanPoint place) {
    return new PlanPoint(
        pose.movedX(place.xMetres(), place.yMetres()),
        pose.movedY(place.xMetres(), place.yMetres()));
  }

  /** Each mark with the edges near it, as designed. */
  private List<Edge> edges(Map<String, PlanPoint> corners) {
    Map<String, PlanPoint> design = job.setOut().slab().corners();
    List<Edge> edges = new ArrayList<>();
    marks.forEach(
        (mark, place) -> {
          for (String corner : outline.corners()) {
            String next = outline.nextAnticlockwise(corner);
            Line planned = new Line(at(design, corner), at(design, next));
            double distance = planned.leftOf(place);
            if (Math.abs(distance) < nearMetres() && planned.isBeside(place)) {
              edges.add(
                  new Edge(
                      mark,
                      corner.compareTo(next) < 0 ? corner + "-" + next : next + "-" + corner,
                      place,
                      new Line(at(corners, corner), at(corners, next)),
                      distance));
            }
          }
        });
    return edges;
  }

  /** Inner corners of the outline that lie beside the rectangle. */
  private List<Facing> innerCorners(Map<String, PlanPoint> corners) {
    Map<String, PlanPoint> design = job.setOut().slab().corners();
    List<PlanPoint> around = List.copyOf(marks.values());
    List<Facing> found = new ArrayList<>();
    for (String corner : outline.corners()) {
      if (outline.interiorAngleRadians(corner) <= StrictMath.PI + 1e-6) {
        continue;
      }
      for (int i = 0; i < around.size(); i++) {
        Line side = new Line(around.get(i), around.get((i + 1) % around.size()));
        double distance = -side.leftOf(at(design, corner));
        if (distance > 0 && distance < nearMetres() && side.isBeside(at(design, corner))) {
          found.add(new InnerCorner(at(corners, corner), side.from(), side.to(), distance));
        }
      }
    }
    return found;
  }

  private double nearMetres() {
    return Math.min(job.setOut().building().lengthMetres(), job.setOut().building().spanMetres())
        / 4;
  }

  /** The pose that lays the designed outline on the adjusted one: first side on first side. */
  private Pose rough(Map<String, PlanPoint> corners) {
    Map<String, PlanPoint> design = job.setOut().slab().corners();
    String first = outline.corners().get(0);
    String second = outline.next(first);
    double turn =
        bearing(at(corners, first), at(corners, second))
            - bearing(at(design, first), at(design, second));
    PlanPoint turned = moved(new Pose(0, 0, turn), at(design, first));
    return new Pose(
        at(corners, first).xMetres() - turned.xMetres(),
        at(corners, first).yMetres() - turned.yMetres(),
        turn);
  }

  private static double bearing(PlanPoint from, PlanPoint to) {
    return StrictMath.atan2(to.yMetres() - from.yMetres(), to.xMetres() - from.xMetres());
  }

  private static PlanPoint at(Map<String, PlanPoint> corners, String corner) {
    return Objects.requireNonNull(corners.get(corner), corner);
  }
}
