package datumpeg.analysis.check;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;

/**
 * A row of like points along the building: the bases or eaves of one side, or the apexes.
 *
 * @param feature base, eave or apex
 * @param side A or B; empty for apexes
 */
public record FrameRow(String feature, String side) implements Comparable<FrameRow> {

  /** Whether a target is a distance between two frames of one row. */
  public static boolean holds(Target target) {
    return target.quantity() == MeasuredQuantity.DISTANCE
        && isRowPoint(target.first())
        && isRowPoint(target.second())
        && target.first().feature().equals(target.second().feature())
        && letter(target.first()) == letter(target.second())
        && number(target.first()) != number(target.second());
  }

  private static boolean isRowPoint(PointName point) {
    return switch (point.feature()) {
      case "base", "eave" -> point.gridMark().isPresent();
      case "apex" -> point.frameNumber().isPresent();
      default -> false;
    };
  }

  public static FrameRow of(PointName point) {
    char letter = letter(point);
    return new FrameRow(point.feature(), letter == 0 ? "" : Character.toString(letter));
  }

  /** The side of a point that has one, else 0. */
  private static char letter(PointName point) {
    return point.gridMark().isPresent() ? point.gridMark().get().letter() : 0;
  }

  public static int number(PointName point) {
    return point.gridMark().map(mark -> mark.number()).or(point::frameNumber).orElseThrow();
  }

  /** The station of a frame on this row, at its centre line. */
  public String station(int number) {
    return feature + "." + side + number;
  }

  /** How the spacing of two frames on this row is named, such as A1-A2/base or 1-2/apex. */
  public String spacing(int from, int to) {
    return side + from + "-" + side + to + "/" + feature;
  }

  /** What the faces named add to the distance between centre lines, in metres. */
  public static double faceOffsetMetres(Target target, SetOut setOut) {
    return beyondCentreMetres(target.second(), setOut) - beyondCentreMetres(target.first(), setOut);
  }

  private static double beyondCentreMetres(PointName point, SetOut setOut) {
    int number = number(point);
    return setOut.portalFrameXMetres(number, point.face().orElseThrow())
        - setOut.portalFrameXMetres(number);
  }

  @Override
  public int compareTo(FrameRow other) {
    return (feature + side).compareTo(other.feature + other.side);
  }
}
