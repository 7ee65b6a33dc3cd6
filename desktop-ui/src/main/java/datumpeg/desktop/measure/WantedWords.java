package datumpeg.desktop.measure;

import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.text.Words;
import java.util.Map;

/** What is asked for, with what the plan says of it, in the user's units. Immutable. */
final class WantedWords {
  private final Words words;
  private final Map<String, String> questions;

  /**
   * @param questions of the stage: the texts by their names
   */
  WantedWords(Words words, Map<String, String> questions) {
    this.words = words;
    this.questions = Map.copyOf(questions);
  }

  /** What to do, in one line. */
  String instruction(Wanted wanted) {
    String name = wanted.target().question();
    return TargetWords.instruction(
        wanted.target(), wanted.face(), questions.getOrDefault(name, name));
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
}
