package datumpeg.analysis.building;

import java.util.stream.Collectors;

/** Finds where a named point of the plan stands. One method a feature. */
final class Positions {
  private final SetOut setOut;
  private final Building building;

  Positions(SetOut setOut) {
    this.setOut = setOut;
    this.building = setOut.building();
  }

  Position of(PointName point) {
    return switch (point.feature()) {
      case "slab" -> slab(point);
      case "seat" -> seat(point);
      case "line" -> line(point);
      case "base" -> column(point, 0);
      case "eave" -> column(point, building.eaveHeightMetres());
      case "column" -> column(point, building.columnHeightMetres() / 2);
      case "apex" -> apex(point);
      case "tip" -> tip(point);
      case "wall" -> wall(point);
      case "opening" -> opening(point);
      default -> new DetailPositions(setOut).of(point);
    };
  }

  private Position slab(PointName point) {
    if (point.placeInMetres().isPresent()) {
      PlanPoint place = point.placeInMetres().get();
      return new Position(place.xMetres(), place.yMetres(), 0);
    }
    PlanPoint corner = setOut.slab().corners().get(point.place());
    if (corner == null) {
      throw new UnknownPointException(
          "The slab has no corner "
              + point.place()
              + "; its corners are "
              + String.join(", ", setOut.slab().cornerNames())
              + ", and slab.@(x;y) names any place in metres.");
    }
    noPart(point);
    return new Position(corner.xMetres(), corner.yMetres(), 0);
  }

  private Position seat(PointName point) {
    noPart(point);
    GridMark mark = mark(point);
    double half = building.sections().columnDepthMetres() / 2;
    double inner = innerFaceYMetres(mark.letter());
    double y = mark.letter() == 'A' ? inner - half : inner + half;
    return new Position(setOut.portalFrameXMetres(mark.number()), y, 0);
  }

  private Position line(PointName point) {
    noPart(point);
    GridMark mark = mark(point);
    return new Position(outerXMetres(mark.number()), innerFaceYMetres(mark.letter()), 0);
  }

  /** End frames at the end line, their outer face; inner frames at their centre. */
  private double outerXMetres(int number) {
    if (number == 1) {
      return setOut.portalFrameXMetres(1, Face.LOW);
    }
    return number == building.portalFrameCount()
        ? setOut.portalFrameXMetres(number, Face.HIGH)
        : setOut.portalFrameXMetres(number);
  }

  private Position column(PointName point, double heightMetres) {
    GridMark mark = mark(point);
    return new Position(
        setOut.portalFrameXMetres(mark.number(), face(point)),
        innerFaceYMetres(mark.letter()),
        heightMetres);
  }

  private Position apex(PointName point) {
    if (building.roof() != Roof.GABLE) {
      throw new UnknownPointException(point.text() + " cannot be: a mono roof has no apex.");
    }
    int number = frameNumber(point);
    double rise = setOut.clearSpanMetres() / 2 * StrictMath.tan(building.pitchRadians());
    return new Position(
        setOut.portalFrameXMetres(number, face(point)),
        building.spanMetres() / 2,
        building.eaveHeightMetres() + rise);
  }

  /** The outermost corner, or with /bottom the bottom corner of the rafter's end. */
  private Position tip(PointName point) {
    boolean bottom = point.part().equals("bottom");
    if (!bottom) {
      noPart(point);
    }
    GridMark mark = mark(point);
    double gap = building.sections().kneeGapMetres();
    double in = gap + (bottom ? setOut.bottomCornerShortfallMetres() / 2 : 0);
    double inner = innerFaceYMetres(mark.letter());
    return new Position(
        setOut.portalFrameXMetres(mark.number()),
        mark.letter() == 'A' ? inner + in : inner - in,
        building.eaveHeightMetres());
  }

  private Position wall(PointName point) {
    GridMark mark = mark(point);
    double height =
        switch (point.part()) {
          case "foot" -> 0;
          case "eave" -> building.eaveHeightMetres();
          default ->
              throw new UnknownPointException(
                  point.text()
                      + " is not a corner of a wall frame; expected "
                      + "wall."
                      + mark.text()
                      + "/foot or wall."
                      + mark.text()
                      + "/eave.");
        };
    return new Position(outerXMetres(mark.number()), innerFaceYMetres(mark.letter()), height);
  }

  /** Left and right as seen from outside the wall. */
  private Position opening(PointName point) {
    Opening opening =
        setOut.openings().stream()
            .filter(candidate -> candidate.id().equals(point.place()))
            .findFirst()
            .orElseThrow(() -> unknownOpening(point));
    double height =
        switch (point.part()) {
          case "left-foot", "right-foot" -> 0;
          case "left-head", "right-head" -> opening.heightMetres();
          case "left", "right" -> opening.heightMetres() / 2;
          default ->
              throw new UnknownPointException(
                  point.text()
                      + " is no part of an opening; expected /left-foot, /right-foot, /left-head or"
                      + " /right-head for a corner, /left or /right for a post.");
        };
    boolean left = point.part().startsWith("left");
    boolean lowOnTheLeft = opening.wall() == Wall.END_N || opening.wall() == Wall.SIDE_A;
    double along = left == lowOnTheLeft ? opening.fromMetres() : opening.toMetres();
    return onWall(opening.wall(), along, height);
  }

  private UnknownPointException unknownOpening(PointName point) {
    String known = setOut.openings().stream().map(Opening::id).collect(Collectors.joining(", "));
    return new UnknownPointException(
        "There is no opening "
            + point.place()
            + "; the job file has "
            + (known.isEmpty() ? "none" : known)
            + ".");
  }

  private Position onWall(Wall wall, double alongMetres, double heightMetres) {
    return switch (wall) {
      case END_1 -> new Position(0, alongMetres, heightMetres);
      case END_N -> new Position(building.lengthMetres(), alongMetres, heightMetres);
      case SIDE_A -> new Position(alongMetres, 0, heightMetres);
      case SIDE_B -> new Position(alongMetres, building.spanMetres(), heightMetres);
    };
  }

  private double innerFaceYMetres(char letter) {
    return letter == 'A'
        ? setOut.columnLineOffsetMetres()
        : building.spanMetres() - setOut.columnLineOffsetMetres();
  }

  private GridMark mark(PointName point) {
    int n = building.portalFrameCount();
    return point
        .gridMark()
        .filter(mark -> mark.letter() <= 'B' && mark.number() <= n)
        .orElseThrow(
            () ->
                new UnknownPointException(
                    point.text() + " is not in the plan; its grid runs from A1 to B" + n + "."));
  }

  private int frameNumber(PointName point) {
    int n = building.portalFrameCount();
    return point
        .frameNumber()
        .filter(number -> number <= n)
        .orElseThrow(
            () ->
                new UnknownPointException(
                    point.text() + " is not in the plan; its frames run from 1 to " + n + "."));
  }

  private static Face face(PointName point) {
    return point
        .face()
        .orElseThrow(
            () ->
                new UnknownPointException(
                    point.text() + " names no face; expected /low, /mid or /high."));
  }

  private static void noPart(PointName point) {
    if (!point.part().isEmpty()) {
      throw new UnknownPointException(
          point.text() + " has no such part; write " + point.feature() + "." + point.place() + ".");
    }
  }
}
