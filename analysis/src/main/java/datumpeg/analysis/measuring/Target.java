package datumpeg.analysis.measuring;

import datumpeg.analysis.building.PointName;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a reading is a reading of. Its text is made once: readings are grouped and looked up by it.
 * Immutable.
 */
public final class Target {

  private static final Pattern BETWEEN_POINTS =
      Pattern.compile("-(?=(?:" + String.join("|", PointName.FEATURES) + ")\\.)");
  private static final Pattern QUESTION = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,60}");

  private final MeasuredQuantity quantity;
  private final List<PointName> points;
  private final Optional<Axis> axis;
  private final String question;
  private final String text;

  /**
   * @param quantity what is measured
   * @param points the two ends of a distance in grid order, one point otherwise, none for a
   *     question
   * @param axis the direction of a tilt or a plumb offset, empty otherwise
   * @param question the question's name for an attribute, empty otherwise
   */
  public Target(
      MeasuredQuantity quantity, List<PointName> points, Optional<Axis> axis, String question) {
    this.quantity = quantity;
    this.points = List.copyOf(points);
    this.axis = axis;
    this.question = question;
    this.text = text(quantity, this.points, axis, question);
  }

  private static String text(
      MeasuredQuantity quantity, List<PointName> points, Optional<Axis> axis, String question) {
    if (quantity == MeasuredQuantity.ATTRIBUTE) {
      return question;
    }
    String names =
        points.size() > 1
            ? points.get(0).text() + "-" + points.get(1).text()
            : points.get(0).text();
    return axis.isPresent() ? names + "/" + axis.get().text() : names;
  }

  /** A distance; either order is accepted, grid order is kept. */
  public static Target distance(PointName one, PointName other) {
    if (one.equals(other)) {
      throw new TargetFormatException(
          "A distance from " + one.text() + " to itself is not a target; expected two points.");
    }
    return new Target(
        MeasuredQuantity.DISTANCE,
        one.compareTo(other) <= 0 ? List.of(one, other) : List.of(other, one),
        Optional.empty(),
        "");
  }

  /** A height, staff reading or offset of one point. */
  public static Target at(MeasuredQuantity quantity, PointName point) {
    return new Target(quantity, List.of(point), Optional.empty(), "");
  }

  /** A tilt of a column or a plumb offset of a point. */
  public static Target along(MeasuredQuantity quantity, PointName point, Axis axis) {
    return new Target(quantity, List.of(point), Optional.of(axis), "");
  }

  /**
   * Reads the target of a quantity from its text.
   *
   * @throws TargetFormatException if the text does not name such a target
   */
  public static Target parse(MeasuredQuantity quantity, String text) {
    String trimmed = text.strip();
    return switch (quantity) {
      case DISTANCE -> parseDistance(trimmed);
      case HEIGHT, STAFF, OFFSET -> at(quantity, point(trimmed));
      case TILT, PLUMB_OFFSET -> parseAxis(quantity, trimmed);
      case ATTRIBUTE -> parseQuestion(trimmed);
    };
  }

  /** What is measured. */
  public MeasuredQuantity quantity() {
    return quantity;
  }

  /** The two ends of a distance in grid order, one point otherwise, none for a question. */
  public List<PointName> points() {
    return points;
  }

  /** The direction of a tilt or a plumb offset, empty otherwise. */
  public Optional<Axis> axis() {
    return axis;
  }

  /** The question's name for an attribute, empty otherwise. */
  public String question() {
    return question;
  }

  /** The target as it is stored and shown. */
  public String text() {
    return text;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Target that
            && quantity == that.quantity
            && text.equals(that.text)
            && points.equals(that.points)
            && axis.equals(that.axis)
            && question.equals(that.question));
  }

  @Override
  public int hashCode() {
    return text.hashCode();
  }

  @Override
  public String toString() {
    return quantity.text() + " " + text;
  }

  /** The first point, or the only one. */
  public PointName first() {
    return points.get(0);
  }

  /** The far end of a distance. */
  public PointName second() {
    return points.get(1);
  }

  private static Target parseDistance(String text) {
    String[] ends = BETWEEN_POINTS.split(text, -1);
    if (ends.length != 2) {
      throw new TargetFormatException(
          "'"
              + text
              + "' is not a distance; expected two points joined by '-', such as"
              + " slab.A1-slab.B4.");
    }
    return distance(point(ends[0]), point(ends[1]));
  }

  private static Target parseAxis(MeasuredQuantity quantity, String text) {
    for (Axis axis : Axis.values()) {
      String suffix = "/" + axis.text();
      if (text.endsWith(suffix)) {
        PointName point = point(text.substring(0, text.length() - suffix.length()));
        requireFeature(quantity, point);
        return along(quantity, point, axis);
      }
    }
    throw new TargetFormatException(
        "'"
            + text
            + "' names no direction; expected /along or /across, such as "
            + (quantity == MeasuredQuantity.TILT ? "column.A3/across" : "eave.A3/across")
            + ".");
  }

  private static void requireFeature(MeasuredQuantity quantity, PointName point) {
    List<String> fitting =
        quantity == MeasuredQuantity.TILT
            ? List.of("column", "mullion", "opening")
            : List.of("base", "eave");
    if (!fitting.contains(point.feature())) {
      throw new TargetFormatException(
          "A "
              + quantity.text()
              + " is taken of one of "
              + String.join(", ", fitting)
              + ", found "
              + point.text()
              + ".");
    }
  }

  private static Target parseQuestion(String text) {
    if (!QUESTION.matcher(text).matches()) {
      throw new TargetFormatException(
          "'" + text + "' is not the name of a question; expected letters, digits, - and _.");
    }
    return new Target(MeasuredQuantity.ATTRIBUTE, List.of(), Optional.empty(), text);
  }

  private static PointName point(String text) {
    return PointName.parse(text)
        .orElseThrow(
            () ->
                new TargetFormatException(
                    "'"
                        + text
                        + "' is not a point; expected FEATURE.PLACE such as slab.A1 or"
                        + " base.A3/low, where FEATURE is one of "
                        + String.join(", ", PointName.FEATURES)
                        + "."));
  }
}
