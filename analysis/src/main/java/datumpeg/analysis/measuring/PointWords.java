package datumpeg.analysis.measuring;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.quantity.LengthDisplay;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Points as a person on the site says them: "slab corner A1", "the foot of column A3". */
final class PointWords {
  private static final Pattern ALONG = Pattern.compile("(.+)@\\((.+)\\)");

  private static final Map<String, String> SEVERAL =
      Map.of(
          "slab", "slab corners",
          "seat", "the slab under bases",
          "line", "line marks",
          "base", "the feet of columns",
          "eave", "the eaves of columns",
          "apex", "the apexes of frames",
          "tip", "rafter tips",
          "wall", "wall frame corners",
          "column", "columns",
          "mullion", "mullions");

  private static final Map<String, String> PARTS =
      Map.of(
          "foot", " at the foot",
          "eave", " at the eave",
          "ridge", " at the ridge",
          "low", " on its face toward end 1",
          "high", " on its face toward end n");

  private PointWords() {}

  /** The whole point, with its face or part. */
  static String of(PointName point) {
    if (point.feature().equals("opening") && !point.part().isEmpty()) {
      return "the " + openingPart(point.part()) + " of opening " + point.place();
    }
    if (point.feature().equals("edge") && point.part().equals("end")) {
      return "the slab's end edge beside base " + point.place();
    }
    if (point.part().equals("bottom")) {
      return "the bottom corner of " + withoutPart(point);
    }
    return withoutPart(point) + part(point);
  }

  /** A point without the face or part that is named. */
  static String withoutPart(PointName point) {
    String place = point.place();
    return switch (point.feature()) {
      case "slab" -> point.placeInMetres().map(PointWords::inPlan).orElse("slab corner " + place);
      case "seat" -> "the slab under base " + place;
      case "line" -> "line mark " + place;
      case "base" -> "the foot of column " + place;
      case "eave" -> "column " + place + " at the eave";
      case "apex" -> "the apex of frame " + place;
      case "tip" -> "rafter tip " + place;
      case "wall" -> "wall frame corner " + place;
      case "anchor" -> "the anchors of base " + place;
      case "edge" ->
          along(place)
              .map(at -> "the slab's edge on side " + at + " from end 1")
              .orElse("the slab's edge beside base " + place);
      case "gutter" ->
          along(place).map(at -> "gutter " + at + " from end 1").orElse("gutter " + place);
      case "profile" ->
          along(place).map(at -> "profile " + at + " from its start").orElse("profile " + place);
      default -> point.feature() + " " + place;
    };
  }

  /** What several points like one are called before what tells them apart, if they have a name. */
  static Optional<String> several(PointName point) {
    if (point.feature().equals("opening") && point.part().contains("-")) {
      return Optional.of("the corners of opening " + point.place() + ",");
    }
    return point.place().contains("@") || point.part().equals("bottom")
        ? Optional.empty()
        : Optional.ofNullable(SEVERAL.get(point.feature()));
  }

  /** What tells a point from several like it. */
  static String among(PointName point) {
    return point.feature().equals("opening")
        ? openingPart(point.part())
        : point.place() + part(point);
  }

  private static String part(PointName point) {
    return point.part().isEmpty()
        ? ""
        : PARTS.getOrDefault(point.part(), ", " + point.part().replace('-', ' '));
  }

  private static String openingPart(String part) {
    return part.contains("-") ? part.replace('-', ' ') : part + " post";
  }

  /** "A 3.5 m" of {@code A@(3.5)}. */
  private static Optional<String> along(String place) {
    Matcher match = ALONG.matcher(place);
    return match.matches()
        ? Optional.of(match.group(1) + " at " + match.group(2) + " m")
        : Optional.empty();
  }

  private static String inPlan(PlanPoint point) {
    return "the slab "
        + metres(point.xMetres())
        + " m from end 1 and "
        + metres(point.yMetres())
        + " m from side A";
  }

  /** As many places as the name may have, without needless zeros. */
  private static String metres(double value) {
    return LengthDisplay.decimal(value, 4).replaceFirst("\\.?0+$", "");
  }
}
