package datumpeg.analysis.measuring;

import datumpeg.analysis.building.PointName;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Targets as a person on the site says them. Every sentence for a crew names targets through here:
 * what is to be read in guided measuring, what does not fit, what to read next. The name by which a
 * target is stored ({@link Target#text}) may stand behind such a sentence, not in it.
 */
public final class TargetWords {
  private static final Pattern NAME_OF_POINT =
      Pattern.compile(
          "\\b(?:"
              + String.join("|", PointName.FEATURES)
              + ")\\.(?:@\\([^()]*\\)|[A-Za-z0-9_-]+(?:\\.[A-Za-z0-9_-]+)*(?:@\\([^()]*\\))?)(?:/[a-z-]+)?");

  private TargetWords() {}

  /** What is read, such as "the distance from slab corner A1 to slab corner B4". */
  public static String of(Target target) {
    return switch (target.quantity()) {
      case DISTANCE -> "the distance " + fromTo(target);
      case HEIGHT -> "the level of " + point(target.first());
      case STAFF -> "the staff on " + point(target.first());
      case OFFSET ->
          isGap(target)
              ? "the gap under the straightedge on " + point(target.first())
              : "the offset of " + point(target.first()) + " from the string line";
      case TILT -> "the tilt of " + point(target.first()) + axis(target);
      case PLUMB_OFFSET ->
          "the offset of " + point(target.first()) + " from the plumb line" + axis(target);
      case ATTRIBUTE -> "the answer to " + target.question();
    };
  }

  /** Many targets, those of one kind together: "the levels of slab corners A1, A4, B4". */
  public static String all(List<Target> targets) {
    return TargetGroups.of(targets);
  }

  /**
   * What to do, in one line.
   *
   * @param face 1 or 2 of a tilt, else 0
   * @param question the text of a question, for an answer
   */
  public static String instruction(Target target, int face, String question) {
    String doing =
        switch (target.quantity()) {
          case DISTANCE -> "Measure " + fromTo(target);
          case HEIGHT -> "Take the level of " + point(target.first());
          case STAFF -> "Read the staff on " + point(target.first());
          case OFFSET ->
              isGap(target)
                  ? "Read the gap under the straightedge on " + point(target.first())
                  : "Measure from the string line to "
                      + point(target.first())
                      + ", less its stand-off";
          case TILT -> "Hold the tilt meter on " + point(target.first()) + "," + axis(target);
          case PLUMB_OFFSET ->
              "Measure from the plumb line to " + point(target.first()) + "," + axis(target);
          case ATTRIBUTE -> "Answer: " + question;
        };
    return switch (face) {
      case 1 -> doing + ", face 1";
      case 2 -> doing + ", face 2: turn the meter end for end";
      default -> doing;
    };
  }

  public static String point(PointName point) {
    return PointWords.of(point);
  }

  /**
   * What a network calls its readings: two points joined are a distance, one is a level. Another
   * name stays as it is.
   */
  public static String named(String name) {
    try {
      return of(Target.parse(MeasuredQuantity.DISTANCE, name));
    } catch (TargetFormatException noDistance) {
      return PointName.parse(name)
          .map(point -> of(Target.at(MeasuredQuantity.HEIGHT, point)))
          .orElse(name);
    }
  }

  /** A sentence of a network, which knows points by their names only. */
  public static String inSentence(String sentence) {
    return NAME_OF_POINT
        .matcher(sentence)
        .replaceAll(match -> Matcher.quoteReplacement(pointNamed(match.group())));
  }

  /** A point by its name; another name stays as it is. */
  public static String pointNamed(String name) {
    return PointName.parse(name).map(PointWords::of).orElse(name);
  }

  /** Both ends; a face that is named at both is said once. */
  static String fromTo(Target target) {
    PointName one = target.first();
    PointName other = target.second();
    Optional<String> both = one.part().equals(other.part()) ? face(one.part()) : Optional.empty();
    return both.map(
            face ->
                "from "
                    + PointWords.withoutPart(one)
                    + " to "
                    + PointWords.withoutPart(other)
                    + " (both on the "
                    + face
                    + ")")
        .orElseGet(() -> "from " + point(one) + " to " + point(other));
  }

  private static Optional<String> face(String part) {
    return switch (part) {
      case "low" -> Optional.of("face toward end 1");
      case "high" -> Optional.of("face toward end n");
      default -> Optional.empty();
    };
  }

  static String axis(Target target) {
    return target.axis().map(axis -> " " + axis.text() + " the building").orElse("");
  }

  /** An offset at a place given in metres is read under a straightedge, not from a string line. */
  static boolean isGap(Target target) {
    return target.first().feature().equals("slab");
  }
}
