package datumpeg.analysis.tell;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Movability;

/** Moves that several checks ask for. */
final class Moves {
  /** What lessens an error that all levels of a set-up share. */
  static final String LEVEL_AGAIN =
      "Level it again from a second set-up on the other side, or take a better meter.";

  /** What lessens an error that all tilts of a meter share. */
  static final String TURN_THE_METER =
      "Turn the meter end for end and read both faces, or take a better meter.";

  private Moves() {}

  static String across(Outcome outcome, Situation situation) {
    boolean movable =
        outcome.target().endsWith("/eave")
            ? situation.movability().tops()
            : situation.movability().bases();
    String move =
        (outcome.deviation() > 0
                ? "Bring the two sides together by "
                : "Bring the two sides apart by ")
            + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    return Movability.said(move, movable);
  }

  static String along(Outcome outcome, Situation situation) {
    boolean aloft =
        outcome.target().endsWith("/eave")
            || outcome.target().endsWith("/apex")
            || outcome.check().equals("spacing-match");
    boolean movable = aloft ? situation.movability().tops() : situation.movability().bases();
    String move =
        (outcome.deviation() > 0 ? "Shorten bay " : "Lengthen bay ")
            + outcome.target().replaceFirst("/", " at the ")
            + " by "
            + Millimetres.with(outcome.deviation(), outcome.expandedUncertainty());
    return Movability.said(move, movable);
  }

  static String leaveIt(Outcome outcome) {
    return "Leave it: the move would be "
        + Millimetres.of(outcome.deviation())
        + ", less than the "
        + Millimetres.of(outcome.expandedUncertainty())
        + " the meter can see. Ask who set the limit.";
  }

  static String asks(String move) {
    return "Fixed by now: ask the engineer. It would take to " + move + ".";
  }
}
