package datumpeg.analysis.measuring;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Something that was moved: a column {@code column.A3}, a whole portal frame {@code portal.3}, a
 * wall {@code wall.A}, or one point such as {@code line.A1}.
 */
public record MovedThing(String feature, String place) {
  private static final Pattern PORTAL_OR_WALL =
      Pattern.compile("(portal)\\.([1-9]\\d{0,2})|(wall)\\.([A-Z])");
  private static final Set<String> COLUMN_POINTS = Set.of("base", "eave", "column", "tip");
  private static final Set<String> PORTAL_POINTS = Set.of("base", "eave", "column", "tip", "apex");
  private static final Set<String> WALL_POINTS = Set.of("base", "eave", "column", "wall");

  /**
   * Reads what was moved.
   *
   * @throws TargetFormatException if the text names no thing that can move
   */
  public static MovedThing parse(String text) {
    Matcher match = PORTAL_OR_WALL.matcher(text);
    if (match.matches()) {
      return match.group(1) != null
          ? new MovedThing("portal", match.group(2))
          : new MovedThing("wall", match.group(4));
    }
    return PointName.parse(text)
        .filter(point -> point.part().isEmpty())
        .map(point -> new MovedThing(point.feature(), point.place()))
        .orElseThrow(
            () ->
                new TargetFormatException(
                    "'"
                        + text
                        + "' is not a thing that can be moved; expected such as column.A3,"
                        + " portal.3, wall.A or line.A1."));
  }

  public String text() {
    return feature + "." + place;
  }

  /** Whether a target stands on the thing, so that its next reading begins a new round. */
  public boolean touches(Target target) {
    return target.points().stream().anyMatch(this::touches);
  }

  private boolean touches(PointName point) {
    return switch (feature) {
      case "column", "base" ->
          COLUMN_POINTS.contains(point.feature()) && point.place().equals(place);
      case "eave" ->
          List.of("eave", "column").contains(point.feature()) && point.place().equals(place);
      case "portal" -> PORTAL_POINTS.contains(point.feature()) && number(point).equals(place);
      case "wall" ->
          WALL_POINTS.contains(point.feature())
              && point
                  .gridMark()
                  .map(mark -> Character.toString(mark.letter()))
                  .equals(Optional.of(place));
      default -> point.feature().equals(feature) && point.place().equals(place);
    };
  }

  private static String number(PointName point) {
    return point.gridMark().map(GridMark::number).map(String::valueOf).orElse(point.place());
  }

  /** The round a reading of the target begins, given everything that was moved so far. */
  public static int roundOf(Target target, List<MovedThing> movedSoFar) {
    return 1 + (int) movedSoFar.stream().filter(thing -> thing.touches(target)).count();
  }
}
