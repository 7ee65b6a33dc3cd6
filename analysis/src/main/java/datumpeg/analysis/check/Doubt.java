package datumpeg.analysis.check;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.TargetWords;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * One contradiction, and what is to be done about it before anything that it reaches is decided.
 *
 * @param reaches ids of readings: what follows from any of them is in doubt
 * @param first what to do first, in words
 */
record Doubt(Set<String> reaches, String first) {
  /** More targets than these are told as a whole. */
  private static final int NAMED = 3;

  private static final String SOME =
      "Find out first which reading is wrong: those it follows from do not fit together. Check the"
          + " points, read them again, and void the wrong one.";

  Doubt {
    reaches = Set.copyOf(reaches);
  }

  /** Of readings tested together; where none of them is named it may be any. */
  static Doubt of(Note note, AgreementTest test, Map<String, Reading> byId) {
    boolean all = test.reach() == AgreementTest.Reach.ALL || note.readingIds().isEmpty();
    return new Doubt(all ? test.readingIds() : Set.copyOf(note.readingIds()), first(note, byId));
  }

  static Doubt of(Note note, Map<String, Reading> byId) {
    return new Doubt(Set.copyOf(note.readingIds()), first(note, byId));
  }

  static Doubt ofAll(AgreementTest test) {
    return new Doubt(test.readingIds(), SOME);
  }

  private static String first(Note note, Map<String, Reading> byId) {
    List<Reading> named =
        note.readingIds().stream().map(byId::get).filter(Objects::nonNull).toList();
    List<String> targets =
        named.stream().map(reading -> TargetWords.of(reading.target())).distinct().toList();
    if (targets.isEmpty() || targets.size() > NAMED) {
      return SOME;
    }
    String those = String.join(" and ", targets);
    boolean tilt =
        named.stream().allMatch(reading -> reading.target().quantity() == MeasuredQuantity.TILT);
    return (named.size() == 1
            ? "Find out first whether " + those + " was read right: it does not fit the others."
            : "Find out first which reading is right: those of "
                + those
                + " contradict each other.")
        + (tilt
            ? " See that the meter sits clean, read both faces again, and void the wrong one."
            : " Check the points, read again, and void the wrong one.");
  }
}
