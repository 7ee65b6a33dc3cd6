package datumpeg.analysis.check.slab;

import datumpeg.analysis.adjust.AdjustedPlan;
import datumpeg.analysis.building.Outline;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.DirectValues;
import datumpeg.analysis.check.Evidence;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.check.StraightLine;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How straight the slab's edges are: a side edge from offsets to a string along it ({@code
 * edge.A@(3.5)}; ends not read are taken to touch it), and any side of the outline from the
 * adjusted points that lie on it as planned, three or more.
 */
public final class EdgeStraightness implements Check {
  private final Job job;
  private final OutcomeMaker outcomes;

  public EdgeStraightness(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.outcomes = outcomes;
  }

  @Override
  public CheckResult of(StageReadings stage) {
    List<Reading> used = stage.where(EdgeStraightness::isOnEdge);
    Optional<DirectValues> direct = DirectValues.of(used, stage);
    List<Outcome> found = new ArrayList<>();
    direct.ifPresent(
        values -> {
          for (String side : List.of("A", "B")) {
            found.addAll(edge(side, values, stage));
          }
        });
    return CheckResult.of(found, List.of(), used)
        .with(direct.map(DirectValues::tests).orElse(List.of()));
  }

  private static boolean isOnEdge(Target target) {
    return target.quantity() == MeasuredQuantity.OFFSET && target.first().feature().equals("edge");
  }

  private List<Outcome> edge(String side, DirectValues direct, StageReadings stage) {
    double length = job.setOut().building().lengthMetres();
    TreeMap<Double, StraightLine.Place> places = new TreeMap<>();
    for (double end : new double[] {0, length}) {
      String name = end == 0 ? "end 1" : "end n";
      places.put(end, new StraightLine.Place(name, end, direct.values().constant(0)));
    }
    List<String> read =
        direct.readings().keySet().stream()
            .filter(name -> name.startsWith("edge." + side))
            .toList();
    for (String name : read) {
      PointName point = PointName.parse(name).orElseThrow();
      double x = job.setOut().position(point).xMetres();
      places.put(x, new StraightLine.Place(point.place(), x, direct.values().quantity(name)));
    }
    return read.isEmpty() || places.size() < 3
        ? List.of()
        : new StraightLine(List.copyOf(places.values()))
            .outcomes("edge." + side, outcomes, stage.evidence(direct.readingsOf(read)));
  }

  /** The sides of the outline on which three or more adjusted points lie, ends included. */
  List<Outcome> of(AdjustedPlan plan, Evidence evidence) {
    Outline outline = new Outline(job.setOut().slab());
    List<Outcome> found = new ArrayList<>();
    for (String corner : outline.corners()) {
      found.addAll(side(corner, outline.next(corner), outline, plan, evidence));
    }
    found.sort(Comparator.comparing(Outcome::target));
    return found;
  }

  private List<Outcome> side(
      String from, String to, Outline outline, AdjustedPlan plan, Evidence evidence) {
    boolean forward =
        PointName.parse("slab." + from)
                .orElseThrow()
                .compareTo(PointName.parse("slab." + to).orElseThrow())
            <= 0;
    String first = "slab." + (forward ? from : to);
    String last = "slab." + (forward ? to : from);
    List<String> onSide =
        plan.names().stream()
            .filter(name -> outline.isOnSide(design(name), from, to))
            .sorted(Comparator.comparingDouble(name -> design(first).distanceMetres(design(name))))
            .toList();
    if (onSide.size() < 3 || !onSide.contains(first) || !onSide.contains(last)) {
      return List.of();
    }
    boolean slabOnLeft = outline.nextAnticlockwise(from).equals(to) == forward;
    List<StraightLine.Place> places =
        onSide.stream()
            .map(
                name ->
                    new StraightLine.Place(
                        name,
                        design(first).distanceMetres(design(name)),
                        outward(name, first, last, slabOnLeft, plan)))
            .toList();
    return new StraightLine(places)
        .outcomes(first + "-" + last.substring("slab.".length()), outcomes, evidence);
  }

  /** From the adjusted chord, so that its own deviation from the chord is the offset itself. */
  private static Linearised outward(
      String name, String first, String last, boolean slabOnLeft, AdjustedPlan plan) {
    Linearised left = plan.offset(name, first, last);
    return slabOnLeft ? left.scaled(-1) : left;
  }

  private PlanPoint design(String name) {
    Position position = job.setOut().position(PointName.parse(name).orElseThrow());
    return position.plan();
  }
}
