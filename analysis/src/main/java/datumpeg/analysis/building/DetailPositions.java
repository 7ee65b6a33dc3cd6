package datumpeg.analysis.building;

import datumpeg.analysis.detail.FlatnessPlan;
import datumpeg.analysis.detail.Mullion;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Where the points of details stand: mullions, anchors, gutters, sheets, profiles. */
final class DetailPositions {
  private static final Pattern ALONG_SIDE =
      Pattern.compile("([AB])@\\((\\d{1,6}(?:\\.\\d{1,6})?)\\)");
  private static final Pattern PROFILE =
      Pattern.compile("([A-Za-z0-9_-]+)@\\((\\d{1,6}(?:\\.\\d{1,6})?)\\)");

  private final SetOut setOut;
  private final Building building;

  DetailPositions(SetOut setOut) {
    this.setOut = setOut;
    this.building = setOut.building();
  }

  Position of(PointName point) {
    return switch (point.feature()) {
      case "mullion" -> mullionFoot(point);
      case "anchor" -> anchor(point);
      case "edge" -> edge(point);
      case "gutter" -> gutter(point);
      case "sheet" -> sheet(point);
      case "profile" -> profile(point);
      default ->
          throw new UnknownPointException(
              "The plan places no "
                  + point.feature()
                  + "; "
                  + point.text()
                  + " is not in the job file.");
    };
  }

  Mullion mullion(PointName point) {
    return setOut.details().mullions().stream()
        .filter(candidate -> candidate.place().equals(point.place()))
        .findFirst()
        .orElseThrow(() -> unknownMullion(point));
  }

  private UnknownPointException unknownMullion(PointName point) {
    String known =
        setOut.details().mullions().stream()
            .map(mullion -> "mullion." + mullion.place())
            .collect(Collectors.joining(", "));
    return new UnknownPointException(
        known.isEmpty()
            ? "The plan places no mullion; " + point.text() + " is not in the job file."
            : point.text() + " is not in the job file; it gives " + known + ".");
  }

  /** The outer face at the foot: the end girt depth in from the slab's end (common practice). */
  private Position mullionFoot(PointName point) {
    noPart(point);
    Mullion mullion = mullion(point);
    double in = building.sections().endGirtDepthMetres();
    double x = mullion.portalFrame() == 1 ? in : building.lengthMetres() - in;
    return new Position(x, mullion.fromSideAMetres(), 0);
  }

  /** The centre of a base's anchors: that of the base. */
  private Position anchor(PointName point) {
    noPart(point);
    return setOut.position(new PointName("seat", point.place(), ""));
  }

  /**
   * The slab's side edge square out from a base; for end frames with /end, the end edge; at x as
   * {@code edge.A@(3.5)}.
   */
  private Position edge(PointName point) {
    Matcher along = ALONG_SIDE.matcher(point.place());
    if (along.matches()) {
      noPart(point);
      double x = Double.parseDouble(along.group(2));
      if (x > building.lengthMetres()) {
        throw new UnknownPointException(
            point.text()
                + " lies beyond the slab; expected at most "
                + building.lengthMetres()
                + " m from its end 1.");
      }
      return new Position(x, along.group(1).equals("A") ? 0 : building.spanMetres(), 0);
    }
    Position base = setOut.position(new PointName("seat", point.place(), ""));
    GridMark mark = point.gridMark().orElseThrow();
    boolean isEnd = mark.number() == 1 || mark.number() == building.portalFrameCount();
    if (point.part().equals("end") && isEnd) {
      double x = mark.number() == 1 ? 0 : building.lengthMetres();
      return new Position(x, base.yMetres(), 0);
    }
    if (!point.part().isEmpty()) {
      throw new UnknownPointException(
          point.text()
              + " is no edge of the slab; expected edge."
              + mark.text()
              + " for the side, and /end at an end frame.");
    }
    return new Position(base.xMetres(), mark.letter() == 'A' ? 0 : building.spanMetres(), 0);
  }

  private Position gutter(PointName point) {
    Matcher match = ALONG_SIDE.matcher(point.place());
    if (!match.matches() || !point.part().isEmpty()) {
      throw new UnknownPointException(
          point.text() + " is not a place on a gutter; expected such as gutter.A@(3.5).");
    }
    double y = match.group(1).equals("A") ? 0 : building.spanMetres();
    return new Position(Double.parseDouble(match.group(2)), y, building.eaveHeightMetres());
  }

  /** The starting edge of a side's k-th sheet, where the k − 1 sheets before it end. */
  private Position sheet(PointName point) {
    GridMark mark =
        point
            .gridMark()
            .filter(given -> given.letter() <= 'B')
            .orElseThrow(
                () ->
                    new UnknownPointException(
                        point.text() + " is no sheet; expected such as sheet.A11/eave."));
    double cover =
        building
            .sections()
            .sheetCoverMetres()
            .orElseThrow(
                () ->
                    new UnknownPointException(
                        "The plan gives no sheet_cover, so it does not place "
                            + point.text()
                            + "."));
    double x = (mark.number() - 1) * cover;
    double side = mark.letter() == 'A' ? 0 : building.spanMetres();
    return switch (point.part()) {
      case "eave" -> new Position(x, side, building.eaveHeightMetres());
      case "ridge" -> {
        double y =
            building.roof() == Roof.GABLE
                ? building.spanMetres() / 2
                : building.spanMetres() - side;
        yield new Position(x, y, setOut.roofHeightMetres(y));
      }
      default ->
          throw new UnknownPointException(
              point.text() + " is no end of a sheet; expected /eave or /ridge.");
    };
  }

  private Position profile(PointName point) {
    Matcher match = PROFILE.matcher(point.place());
    FlatnessPlan.Line line =
        Optional.of(match)
            .filter(given -> given.matches() && point.part().isEmpty())
            .flatMap(given -> line(given.group(1)))
            .orElseThrow(
                () ->
                    new UnknownPointException(
                        point.text()
                            + " is not on a profile of the job file; expected a line of [flatness]"
                            + " and a distance along it in metres, such as profile.L1@(0.6)."));
    double share = Double.parseDouble(match.group(2)) / line.lengthMetres();
    return new Position(
        line.fromX() + share * (line.toX() - line.fromX()),
        line.fromY() + share * (line.toY() - line.fromY()),
        0);
  }

  private Optional<FlatnessPlan.Line> line(String name) {
    return setOut.details().flatness().flatMap(plan -> Optional.ofNullable(plan.lines().get(name)));
  }

  private static void noPart(PointName point) {
    if (!point.part().isEmpty()) {
      throw new UnknownPointException(
          point.text() + " has no such part; write " + point.feature() + "." + point.place() + ".");
    }
  }
}
