package datumpeg.analysis.tell;

import datumpeg.analysis.conform.DecidedAs;
import datumpeg.analysis.conform.Outcome;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What one family of checks is called and says: its names, what is wrong, which outcomes are one
 * cause, and what to move. To add a check is to add its words to one of these, or to add one.
 */
interface Telling {
  /** The checks of this family by id, with what each is called. */
  Map<String, String> titles();

  /** What it was checked of: "corner A1", "A1 to A2 at the base". */
  default String place(String check, String target) {
    return Places.level(Places.range(target));
  }

  /** What is behind an outcome; outcomes of one cause are told once. */
  default String cause(Outcome outcome, List<Outcome> all) {
    return outcome.check() + " " + outcome.target();
  }

  /** What is wrong, as the rest of a sentence. */
  String sentence(Outcome outcome, List<Outcome> all);

  /** What to do about it while it can be done, else whom to ask. */
  String remedy(Outcome outcome, Situation situation);

  /** Whether that holds also where the move is smaller than what the meter can see. */
  default boolean movesUnseen(Outcome outcome) {
    return false;
  }

  /** As what its number is decided. */
  default DecidedAs decidedAs(String check) {
    return DecidedAs.VALUE;
  }

  /** What would decide it, where that is no matter of the readings' uncertainty alone. */
  default Optional<String> whatWouldDecide(Outcome outcome, String chance) {
    return Optional.empty();
  }

  /** How to lessen the error that all readings of its meter share. */
  default String meterCheck(String check) {
    return "Check that error on a known distance and put it in the job file, or take a better"
        + " meter.";
  }

  /** What to do about the worst of a cause, knowing all outcomes; its remedy, unless one can. */
  default String action(Outcome worst, List<Outcome> all, Situation situation) {
    return worst.remedy();
  }

  /** For a check that a family lists and has no words for. */
  static IllegalArgumentException notHere(Outcome outcome) {
    return new IllegalArgumentException(
        "words of " + outcome.check() + ": listed in a family of checks that has none for it");
  }
}
