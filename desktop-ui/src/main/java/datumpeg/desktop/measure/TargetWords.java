package datumpeg.desktop.measure;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Map;

/** What is asked for, in the words of the trade. Immutable. */
final class TargetWords {
  private static final List<String> WITH_WORDS =
      List.of(
          "slab", "seat", "line", "base", "eave", "apex", "tip", "wall", "mullion", "opening",
          "gutter", "column", "anchor", "edge", "sheet", "profile");

  private final Words words;
  private final Map<String, String> questions;

  /**
   * @param questions of the stage: the texts by their names
   */
  TargetWords(Words words, Map<String, String> questions) {
    this.words = words;
    this.questions = Map.copyOf(questions);
  }

  /** What to do, in one line. */
  String instruction(Wanted wanted) {
    Target target = wanted.target();
    String first = target.points().isEmpty() ? question(target) : point(target.first());
    String doing =
        switch (target.quantity()) {
          case DISTANCE -> words.text("measure.do.distance", first, point(target.second()));
          case HEIGHT -> words.text("measure.do.height", first);
          case STAFF -> words.text("measure.do.staff", first);
          case OFFSET -> words.text("measure.do.offset", first);
          case TILT -> words.text("measure.do.tilt", first, axis(target));
          case PLUMB_OFFSET -> words.text("measure.do.plumb-offset", first, axis(target));
          case ATTRIBUTE -> words.text("measure.do.attribute", first);
        };
    return wanted.face() == 0 ? doing : doing + words.text("measure.face-" + wanted.face());
  }

  private String question(Target target) {
    return questions.getOrDefault(target.question(), target.question());
  }

  /** What it is a reading of, short. */
  String name(Wanted wanted) {
    Target target = wanted.target();
    String face = wanted.face() == 0 ? "" : ", " + words.text("measure.face", wanted.face());
    String kind = words.text("measure.kind." + target.quantity().text());
    return kind + " " + target.text() + face;
  }

  /** What the plan says it reads. */
  String expected(Wanted wanted) {
    if (wanted.isQuestion()) {
      return words.text("measure.yes-or-no");
    }
    if (wanted.expectedSi().isEmpty()) {
      return words.text("measure.no-plan");
    }
    return written(wanted, wanted.expectedSi().getAsDouble());
  }

  /** A value in the unit in which it is asked for. */
  String written(Wanted wanted, double si) {
    if (wanted.isQuestion()) {
      return words.text(si == 1 ? "measure.yes" : "measure.no");
    }
    return wanted.target().quantity() == MeasuredQuantity.TILT
        ? LengthDisplay.decimal(StrictMath.toDegrees(si), 2).replace('-', '−') + "°"
        : length(si);
  }

  /** How far a value is off the plan; empty where the plan says nothing. */
  String offPlan(Wanted wanted, double si) {
    if (wanted.expectedSi().isEmpty()) {
      return "";
    }
    double off = si - wanted.expectedSi().getAsDouble();
    String size =
        wanted.target().quantity() == MeasuredQuantity.TILT
            ? LengthDisplay.signed(StrictMath.toDegrees(off), 2) + "°"
            : words.figures().deviation(off);
    return words.text("measure.off-plan", size.replace('-', '−'));
  }

  /** Metres, as on a drawing or a tape; else feet and inches. */
  private String length(double metres) {
    boolean metric = words.figures().symbol(OutcomeUnit.MILLIMETRE).equals("mm");
    return metric
        ? LengthDisplay.decimal(metres, 3).replace('-', '−') + " m"
        : words.figures().size(metres);
  }

  private String axis(Target target) {
    return target.axis().map(axis -> words.text("measure.axis." + axis.text())).orElse("");
  }

  private String point(PointName point) {
    if (point.feature().equals("slab") && point.place().startsWith("@")) {
      return words.text("point.slab-at", point.place().substring(1));
    }
    String name =
        WITH_WORDS.contains(point.feature())
            ? words.text("point." + point.feature(), point.place())
            : point.feature() + " " + point.place();
    return point.part().isEmpty() ? name : name + ", " + part(point);
  }

  private String part(PointName point) {
    return switch (point.part()) {
      case "low", "high", "foot", "eave", "bottom" -> words.text("point.part." + point.part());
      default -> point.part().replace('-', ' ');
    };
  }
}
