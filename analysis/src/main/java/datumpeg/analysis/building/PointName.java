package datumpeg.analysis.building;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The name of a point, {@code FEATURE.PLACE[/PART]}: {@code slab.A1}, {@code slab.@(9.0;4.5)},
 * {@code base.A3/low}, {@code wall.A1/foot}. Its text and its grid mark are made once: points are
 * looked up by them everywhere. Immutable.
 */
public final class PointName implements Comparable<PointName> {
  /** The features a point may belong to. */
  public static final List<String> FEATURES =
      List.of(
          "slab", "seat", "line", "base", "eave", "apex", "tip", "wall", "mullion", "opening",
          "gutter", "column", "anchor", "edge", "sheet", "profile");

  private static final int MOST_DIGITS = 3;

  private static final Pattern TEXT =
      Pattern.compile(
          "([a-z]+)\\.([A-Za-z0-9_-]*@\\([^()/]{1,40}\\)|[A-Za-z0-9_.-]{1,40})(?:/([a-z-]{1,20}))?");
  private static final Pattern PLACE_IN_METRES =
      Pattern.compile(
          "@\\(\\s*(-?\\d{1,6}(?:\\.\\d{1,6})?)\\s*;\\s*(-?\\d{1,6}(?:\\.\\d{1,6})?)\\s*\\)");

  private final String feature;
  private final String place;
  private final String part;
  private final String text;
  private final Optional<GridMark> gridMark;

  /**
   * @param feature what the point belongs to, one of {@link #FEATURES}
   * @param place where: a grid mark, a frame number, a name, or a place in metres
   * @param part the face of a column, or which corner; empty for the centre line
   */
  public PointName(String feature, String place, String part) {
    this.feature = feature;
    this.place = place;
    this.part = part;
    this.text = feature + "." + place + (part.isEmpty() ? "" : "/" + part);
    this.gridMark = GridMark.parse(place);
  }

  /**
   * Reads a point's name; a face {@code /mid} is dropped, since no face means the centre line.
   *
   * @return empty if the text is not of the form, or the feature is unknown
   */
  public static Optional<PointName> parse(String text) {
    Matcher match = TEXT.matcher(text.strip());
    if (!match.matches() || !FEATURES.contains(match.group(1))) {
      return Optional.empty();
    }
    String part = match.group(3) == null || match.group(3).equals("mid") ? "" : match.group(3);
    return Optional.of(new PointName(match.group(1), match.group(2), part));
  }

  /** The name for a grid crossing of a feature, such as base A3. */
  public static PointName at(String feature, GridMark mark) {
    return new PointName(feature, mark.text(), "");
  }

  public static PointName at(String feature, GridMark mark, Face face) {
    return new PointName(feature, mark.text(), face == Face.MID ? "" : face.text());
  }

  /** What the point belongs to, one of {@link #FEATURES}. */
  public String feature() {
    return feature;
  }

  /** Where: a grid mark, a frame number, a name, or a place in metres. */
  public String place() {
    return place;
  }

  /** The face of a column, or which corner; empty for the centre line. */
  public String part() {
    return part;
  }

  /** The place, if it is a crossing of the grid. */
  public Optional<GridMark> gridMark() {
    return gridMark;
  }

  /** The face named, the centre line if none is; empty if the part is not a face. */
  public Optional<Face> face() {
    return switch (part) {
      case "" -> Optional.of(Face.MID);
      case "low" -> Optional.of(Face.LOW);
      case "high" -> Optional.of(Face.HIGH);
      default -> Optional.empty();
    };
  }

  /** The place, if it is given in metres as {@code @(x;y)}. */
  public Optional<PlanPoint> placeInMetres() {
    Matcher match = PLACE_IN_METRES.matcher(place);
    return match.matches()
        ? Optional.of(
            new PlanPoint(Double.parseDouble(match.group(1)), Double.parseDouble(match.group(2))))
        : Optional.empty();
  }

  /** The name as it is stored and shown. */
  public String text() {
    return text;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof PointName that
            && text.equals(that.text)
            && feature.equals(that.feature)
            && part.equals(that.part));
  }

  @Override
  public int hashCode() {
    return text.hashCode();
  }

  @Override
  public String toString() {
    return text;
  }

  /** Grid order: letter, then number; then feature and the rest by their text. */
  @Override
  public int compareTo(PointName other) {
    Optional<GridMark> mine = gridMark;
    Optional<GridMark> others = other.gridMark;
    if (mine.isPresent() && others.isPresent()) {
      int order = mine.get().compareTo(others.get());
      return order != 0 ? order : text.compareTo(other.text);
    }
    if (mine.isPresent() != others.isPresent()) {
      return mine.isPresent() ? -1 : 1;
    }
    Optional<Integer> number = frameNumber();
    if (number.isPresent()
        && other.frameNumber().isPresent()
        && !number.equals(other.frameNumber())) {
      return Integer.compare(number.get(), other.frameNumber().get());
    }
    return text.compareTo(other.text);
  }

  /** The frame number, if the place is one, as in {@code apex.3}. */
  public Optional<Integer> frameNumber() {
    if (place.length() > MOST_DIGITS || place.isEmpty() || place.charAt(0) == '0') {
      return Optional.empty();
    }
    int number = 0;
    for (int i = 0; i < place.length(); i++) {
      int digit = place.charAt(i) - '0';
      if (digit < 0 || digit > 9) {
        return Optional.empty();
      }
      number = 10 * number + digit;
    }
    return Optional.of(number);
  }
}
