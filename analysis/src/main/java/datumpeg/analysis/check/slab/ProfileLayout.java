package datumpeg.analysis.check.slab;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.quantity.LengthDisplay;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether level profiles are laid as E1155M asks, so far as the job file tells: long enough, far
 * enough apart and from the edges, and in directions that see the whole floor. What is not so is
 * told and decides nothing: joints, openings and the test section are known on site only.
 *
 * <p>Source of the figures: a national laboratory's data sheet for E1155M of 2003
 * (transatlantech.com, document 1e30) and another sheet's copy of the same (document 382981185 of a
 * public document share); the standard itself was not seen.
 */
final class ProfileLayout {
  private static final double LEAST_LENGTH_METRES = 3.3;
  private static final double LEAST_APART_METRES = 1.2;
  private static final double LEAST_FROM_EDGE_METRES = 0.6;

  /** A section narrower than this is read at 45 degrees to its sides. */
  private static final double NARROW_METRES = 7.5;

  /** How well a line is marked out: nobody is told of less. Our choice. */
  private static final double MARKED_METRES = 0.01;

  private static final double MARKED_RADIANS = StrictMath.toRadians(5);

  private final Map<String, FlatnessPlan.Line> lines;
  private final List<PlanPoint> corners;

  /**
   * @param lines profiles by name
   * @param corners of the slab, in order around it
   */
  ProfileLayout(Map<String, FlatnessPlan.Line> lines, List<PlanPoint> corners) {
    this.lines = lines;
    this.corners = List.copyOf(corners);
  }

  /** What the sheets ask for and is not so; empty if nothing. */
  Optional<Note> note() {
    List<String> unlike = new ArrayList<>();
    lines.forEach((name, line) -> unlike.addAll(unlike(name, line)));
    List<String> names = List.copyOf(lines.keySet());
    for (int i = 0; i < names.size(); i++) {
      for (int j = 0; j < i; j++) {
        tooClose(names.get(j), names.get(i)).ifPresent(unlike::add);
      }
    }
    directions().ifPresent(unlike::add);
    return unlike.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Note(
                Note.Kind.INFORMATION,
                "The profiles are not laid as E1155M asks (verify against your copy): "
                    + String.join("; ", unlike)
                    + ". FF and FL are told all the same.",
                List.of()));
  }

  private List<String> unlike(String name, FlatnessPlan.Line line) {
    List<String> unlike = new ArrayList<>();
    if (line.lengthMetres() < LEAST_LENGTH_METRES - MARKED_METRES) {
      unlike.add(
          name
              + " is "
              + metres(line.lengthMetres())
              + " long, at least "
              + metres(LEAST_LENGTH_METRES));
    }
    double fromEdge = fromEdgeMetres(line);
    if (fromEdge < LEAST_FROM_EDGE_METRES - MARKED_METRES) {
      unlike.add(
          name
              + " comes within "
              + metres(fromEdge)
              + " of an edge, at least "
              + metres(LEAST_FROM_EDGE_METRES));
    }
    return unlike;
  }

  private double fromEdgeMetres(FlatnessPlan.Line line) {
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < corners.size(); i++) {
      PlanPoint from = corners.get(i);
      PlanPoint to = corners.get((i + 1) % corners.size());
      nearest =
          Math.min(
              nearest,
              apartMetres(
                  line,
                  new FlatnessPlan.Line(
                      from.xMetres(), from.yMetres(), to.xMetres(), to.yMetres())));
    }
    return nearest;
  }

  private Optional<String> tooClose(String one, String other) {
    FlatnessPlan.Line first = line(one);
    FlatnessPlan.Line second = line(other);
    double apart = apartMetres(first, second);
    return alike(bearing(first), bearing(second)) && apart < LEAST_APART_METRES - MARKED_METRES
        ? Optional.of(
            one
                + " and "
                + other
                + " are "
                + metres(apart)
                + " apart, at least "
                + metres(LEAST_APART_METRES))
        : Optional.empty();
  }

  private FlatnessPlan.Line line(String name) {
    return Optional.ofNullable(lines.get(name)).orElseThrow();
  }

  /** Measured from the slab's first side. */
  private Optional<String> directions() {
    PlanPoint first = corners.get(0);
    PlanPoint next = corners.get(1);
    double side =
        StrictMath.atan2(next.yMetres() - first.yMetres(), next.xMetres() - first.xMetres());
    double along = lengthMetres(side);
    double across = lengthMetres(side + StrictMath.PI / 2);
    double all = lines.values().stream().mapToDouble(FlatnessPlan.Line::lengthMetres).sum();
    if (narrowMetres(side) < NARROW_METRES) {
      double slanting =
          lengthMetres(side + StrictMath.PI / 4) + lengthMetres(side - StrictMath.PI / 4);
      return slanting < all - MARKED_METRES
          ? Optional.of(
              "a slab narrower than "
                  + metres(NARROW_METRES)
                  + " is read along lines at 45 degrees to its sides")
          : Optional.empty();
    }
    return Math.abs(along - across) > LEAST_LENGTH_METRES
        ? Optional.of(
            metres(along)
                + " run along the first side and "
                + metres(across)
                + " across it, expected as much each way")
        : Optional.empty();
  }

  private double narrowMetres(double side) {
    return Math.min(extentMetres(side), extentMetres(side + StrictMath.PI / 2));
  }

  private double extentMetres(double bearing) {
    double x = StrictMath.cos(bearing);
    double y = StrictMath.sin(bearing);
    double[] places =
        corners.stream().mapToDouble(p -> x * p.xMetres() + y * p.yMetres()).sorted().toArray();
    return places[places.length - 1] - places[0];
  }

  /** How much of the lines runs in a direction, either way. */
  private double lengthMetres(double bearing) {
    return lines.values().stream()
        .filter(line -> alike(bearing(line), bearing))
        .mapToDouble(FlatnessPlan.Line::lengthMetres)
        .sum();
  }

  private static double bearing(FlatnessPlan.Line line) {
    return StrictMath.atan2(line.toY() - line.fromY(), line.toX() - line.fromX());
  }

  private static boolean alike(double bearing, double other) {
    return Math.abs(StrictMath.sin(bearing - other)) < StrictMath.sin(MARKED_RADIANS);
  }

  /** Of two lines that do not cross, as an edge and a profile on the slab: from end to line. */
  private static double apartMetres(FlatnessPlan.Line one, FlatnessPlan.Line other) {
    return Math.min(
        Math.min(
            fromLineMetres(one.fromX(), one.fromY(), other),
            fromLineMetres(one.toX(), one.toY(), other)),
        Math.min(
            fromLineMetres(other.fromX(), other.fromY(), one),
            fromLineMetres(other.toX(), other.toY(), one)));
  }

  private static double fromLineMetres(double x, double y, FlatnessPlan.Line line) {
    double dx = line.toX() - line.fromX();
    double dy = line.toY() - line.fromY();
    double square = dx * dx + dy * dy;
    double share = square == 0 ? 0 : ((x - line.fromX()) * dx + (y - line.fromY()) * dy) / square;
    double held = Math.max(0, Math.min(1, share));
    double offX = x - line.fromX() - held * dx;
    double offY = y - line.fromY() - held * dy;
    return Math.sqrt(offX * offX + offY * offY);
  }

  private static String metres(double metres) {
    return LengthDisplay.decimal(metres, 2) + " m";
  }
}
