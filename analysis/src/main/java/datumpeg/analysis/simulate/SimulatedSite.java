package datumpeg.analysis.simulate;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Position;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.Target;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A site as it truly is: the plan, how far each point is from it, and how each column stands.
 *
 * <p>A column's base, eave and faces move together: they are shifted by the shift of {@code
 * base.A3}, and the eave by the column's lean besides. Every other point has its own shift.
 *
 * <p>Immutable: each {@code with…} is a new site.
 *
 * @param shifts true position − design position by point, in metres; a point not named has none
 * @param columns by grid mark; a column not named is plumb and straight
 * @param posts of ends and openings, such as mullion.1.M1 or opening.D1/left; likewise
 * @param marks how far beside each point it is marked, and then always measured, in metres; a point
 *     not named is marked where it is
 */
public record SimulatedSite(
    SetOut setOut,
    Map<PointName, Position> shifts,
    Map<GridMark, SimulatedColumn> columns,
    Map<PointName, SimulatedColumn> posts,
    Map<PointName, Position> marks) {
  /** Where every plumb line hangs, before the foot of its column: any place would do. */
  private static final double PLUMB_LINE_METRES = 0.1;

  private static final Position NONE = new Position(0, 0, 0);

  public SimulatedSite {
    shifts = Collections.unmodifiableMap(new LinkedHashMap<>(shifts));
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    posts = Map.copyOf(posts);
    marks = Map.copyOf(marks);
  }

  /** A site on which everything is where the drawing has it. */
  public static SimulatedSite asDesigned(SetOut setOut) {
    return new SimulatedSite(setOut, Map.of(), Map.of(), Map.of(), Map.of());
  }

  /**
   * The same site with one point somewhere else.
   *
   * @param point without a face; for a column, its base
   * @param shiftMetres true − design: x, y and level
   * @throws datumpeg.analysis.building.UnknownPointException if the plan has no such point
   * @throws IllegalArgumentException if the point is not shifted by itself
   */
  public SimulatedSite withShift(PointName point, Position shiftMetres) {
    setOut.position(point);
    if (!shiftedBy(point).equals(point)) {
      throw new IllegalArgumentException(
          point.text() + " is not shifted by itself; shift " + shiftedBy(point).text() + ".");
    }
    Map<PointName, Position> more = new LinkedHashMap<>(shifts);
    more.put(point, shiftMetres);
    return new SimulatedSite(setOut, more, columns, posts, marks);
  }

  /** The same site with one column standing so. */
  public SimulatedSite withColumn(GridMark mark, SimulatedColumn column) {
    setOut.position(PointName.at("column", mark));
    Map<GridMark, SimulatedColumn> more = new LinkedHashMap<>(columns);
    more.put(mark, column);
    return new SimulatedSite(setOut, shifts, more, posts, marks);
  }

  /**
   * The same site with one post standing so.
   *
   * @throws datumpeg.analysis.building.UnknownPointException if the plan has no such post
   */
  public SimulatedSite withPost(PointName post, SimulatedColumn standing) {
    setOut.postHeightMetres(post);
    Map<PointName, SimulatedColumn> more = new LinkedHashMap<>(posts);
    more.put(post, standing);
    return new SimulatedSite(setOut, shifts, columns, more, marks);
  }

  public SimulatedColumn post(PointName post) {
    return posts.getOrDefault(post, SimulatedColumn.PLUMB);
  }

  /** The same site as it is seen by who marked its points a little beside where they are. */
  public SimulatedSite withMarks(Map<PointName, Position> besideMetres) {
    return new SimulatedSite(setOut, shifts, columns, posts, besideMetres);
  }

  public SimulatedColumn column(GridMark mark) {
    return columns.getOrDefault(mark, SimulatedColumn.PLUMB);
  }

  /**
   * Where a point truly is, or is marked if it has a mark beside it, in metres.
   *
   * @throws datumpeg.analysis.building.UnknownPointException if the plan has no such point
   */
  public Position position(PointName point) {
    Position design = setOut.position(point);
    Position shift = shifts.getOrDefault(shiftedBy(point), NONE);
    double leanAlong = 0;
    double leanAcross = 0;
    Optional<GridMark> grid = point.gridMark();
    if (grid.isPresent() && (point.feature().equals("eave") || point.feature().equals("column"))) {
      leanAlong = offPlumbMetres(grid.get(), Axis.ALONG, design.zMetres());
      leanAcross = offPlumbMetres(grid.get(), Axis.ACROSS, design.zMetres());
    }
    Position mark = marks.getOrDefault(point, NONE);
    return new Position(
        design.xMetres() + shift.xMetres() + leanAlong + mark.xMetres(),
        design.yMetres() + shift.yMetres() + leanAcross + mark.yMetres(),
        design.zMetres() + shift.zMetres() + mark.zMetres());
  }

  private double offPlumbMetres(GridMark mark, Axis axis, double upMetres) {
    return column(mark).offPlumbMetres(axis, upMetres, columnHeightMetres());
  }

  private double columnHeightMetres() {
    return setOut.building().columnHeightMetres();
  }

  /** The point whose shift moves this one: the base for a column's faces, eave and middle. */
  public static PointName shiftedBy(PointName point) {
    return switch (point.feature()) {
      case "base", "eave", "column" -> new PointName("base", point.place(), "");
      case "apex" -> new PointName("apex", point.place(), "");
      default -> point;
    };
  }

  /** The true distance of a distance target; between rafter tips, the tip distance. */
  public double distanceMetres(Target target) {
    PointName one = target.first();
    PointName other = target.second();
    double change =
        position(one).distanceMetres(position(other))
            - setOut.position(one).distanceMetres(setOut.position(other));
    return setOut.nominalDistanceMetres(one, other) + change;
  }

  /**
   * The true tilt of a column or post at a height.
   *
   * @throws IllegalArgumentException if the target is not a tilt of one
   */
  public double tiltRadians(Target target, double upMetres) {
    PointName point = target.first();
    if (!point.feature().equals("column")) {
      return post(point).tiltRadians(axis(target), upMetres, setOut.postHeightMetres(point));
    }
    return column(mark(target)).tiltRadians(axis(target), upMetres, columnHeightMetres());
  }

  /** The true offset from the plumb line that hangs before a column's foot. */
  public double plumbOffsetMetres(Target target) {
    double up = setOut.position(target.first()).zMetres();
    Position beside = marks.getOrDefault(target.first(), NONE);
    return PLUMB_LINE_METRES
        + offPlumbMetres(mark(target), axis(target), up)
        + (axis(target) == Axis.ALONG ? beside.xMetres() : beside.yMetres());
  }

  /**
   * The true gap under a straightedge laid over a place of the slab: how far the place lies below
   * or above the slab around it, which is where the plan has it.
   */
  private double gapMetres(PointName place) {
    return Math.abs(position(place).zMetres() - setOut.position(place).zMetres());
  }

  /**
   * Of a place on the slab the gap under a straightedge; else the true offset from a string
   * stretched through the wall's end points of the same feature, or along the slab's edge from
   * corner to corner, where these truly are; positive = outward.
   */
  public double offsetMetres(Target target) {
    PointName point = target.first();
    if (point.feature().equals("slab")) {
      return gapMetres(point);
    }
    SimulatedSite unmarked = withMarks(Map.of());
    char letter = point.place().charAt(0);
    Position start = unmarked.position(rowEnd(point, 1, 0));
    Position end =
        unmarked.position(
            rowEnd(point, setOut.building().portalFrameCount(), setOut.building().lengthMetres()));
    Position here = position(point);
    double alongX = end.xMetres() - start.xMetres();
    double alongY = end.yMetres() - start.yMetres();
    double cross =
        alongX * (here.yMetres() - start.yMetres()) - alongY * (here.xMetres() - start.xMetres());
    double towardB = cross / Math.sqrt(alongX * alongX + alongY * alongY);
    return letter == 'A' ? -towardB : towardB;
  }

  /** Where the string is held: at the same feature of an end frame, or at the slab's corner. */
  private static PointName rowEnd(PointName point, int number, double xMetres) {
    char letter = point.place().charAt(0);
    return point.feature().equals("edge")
        ? new PointName("edge", letter + "@(" + xMetres + ")", "")
        : PointName.at(point.feature(), new GridMark(letter, number));
  }

  private static GridMark mark(Target target) {
    return target
        .first()
        .gridMark()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    target.text() + " cannot be simulated; expected a column of the grid."));
  }

  private static Axis axis(Target target) {
    return target
        .axis()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    target.text() + " cannot be simulated; expected /along or /across."));
  }
}
