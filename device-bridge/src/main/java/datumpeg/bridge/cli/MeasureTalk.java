package datumpeg.bridge.cli;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.collect.GuideState;
import datumpeg.bridge.collect.LinkState;
import datumpeg.bridge.collect.ReadingStore;
import datumpeg.bridge.collect.SessionWatcher;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.PrintStream;
import java.util.Map;

/**
 * Says in plain lines what a measuring session does. Each line is printed in one piece: who reads
 * along, at a terminal or in a file, never meets half of one.
 */
final class MeasureTalk implements SessionWatcher {
  private final PrintStream err;
  private final Map<String, String> questions;
  private final boolean big;
  private final boolean tones;

  /**
   * @param questions of the stage: the texts by their names
   * @param big whether targets are shown in big letters
   * @param tones whether the terminal's bell sounds; nothing is said by sound alone
   */
  MeasureTalk(PrintStream err, Map<String, String> questions, boolean big, boolean tones) {
    this.err = err;
    this.questions = Map.copyOf(questions);
    this.big = big;
    this.tones = tones;
  }

  @Override
  public void asking(Wanted wanted, int leftAfterThis) {
    if (wanted.isQuestion()) {
      String name = wanted.target().question();
      err.print(
          "Answer %s: %s  Type yes or no.  (%d more after it)%n"
              .formatted(name, questions.getOrDefault(name, ""), leftAfterThis));
      return;
    }
    err.print(
        "%s%s  (%s; %d more after it)%n"
            .formatted(
                TargetWords.instruction(wanted.target(), wanted.face(), ""),
                wanted.expectedSi().isPresent() ? ", plan " + expected(wanted) : "",
                wanted.name(),
                leftAfterThis));
    if (big) {
      BigLetters.lines(wanted.target().text()).forEach(err::println);
      if (wanted.expectedSi().isPresent()) {
        BigLetters.lines(expected(wanted)).forEach(err::println);
      }
    }
  }

  /** One bell for a value taken, two for one that is held. */
  private String tone(int count) {
    return tones ? "\u0007".repeat(count) : "";
  }

  @Override
  public void held(GuideState.Question question) {
    err.print(
        "  HELD: %s for %s: %s%s%n"
            .formatted(
                (question.delivered().valueText() + " " + question.delivered().unitText()).strip(),
                question.choices().get(0).words(),
                question.why(),
                tone(2)));
    if (question.choices().size() == 1) {
      err.println("  Type yes to take it, again to measure again, skip or undo.");
    } else {
      for (int i = 0; i < question.choices().size(); i++) {
        Wanted choice = question.choices().get(i);
        err.print(
            "    %d  %s (%s)%s%n"
                .formatted(
                    i + 1,
                    choice.words(),
                    choice.name(),
                    choice.expectedSi().isPresent() ? ", plan " + expected(choice) : ""));
      }
      err.println("  Type the number of what was measured, or again to measure again.");
    }
  }

  @Override
  public void waiting(int count, String why) {
    err.print(
        "  NOT STORED YET: %d wait(s), at most %d may. %s%s%n"
            .formatted(count, ReadingStore.LARGEST_WAITING, why, tone(2)));
  }

  @Override
  public void captureEnded(String why) {
    err.print("  THE RAW BYTES ARE NOT KEPT: %s Readings still are.%s%n".formatted(why, tone(2)));
  }

  @Override
  public void captureGoesOn() {
    err.println("  the raw bytes are kept again; those since then are missing");
  }

  @Override
  public void drained() {
    err.println("  what waited is stored now");
  }

  private static String expected(Wanted wanted) {
    double si = wanted.expectedSi().orElse(0);
    return wanted.target().quantity() == MeasuredQuantity.TILT
        ? LengthDisplay.decimal(StrictMath.toDegrees(si), 2) + " deg"
        : LengthDisplay.decimal(si, 3) + " m";
  }

  @Override
  public void recorded(ReadingEntry reading) {
    err.print(
        "  recorded %s for %s%s%n"
            .formatted(
                (reading.value() + " " + reading.unit()).strip(), reading.target(), tone(1)));
  }

  @Override
  public void withdrawn(ReadingEntry reading) {
    err.print(
        "  withdrawn %s for %s%n"
            .formatted((reading.value() + " " + reading.unit()).strip(), reading.target()));
  }

  @Override
  public void putAside(String why) {
    err.println("  put aside: " + why);
  }

  @Override
  public void lost(LinkLostException loss, int droppedByteCount) {
    err.println(
        "  "
            + loss.getMessage()
            + (droppedByteCount > 0
                ? " " + droppedByteCount + " byte(s) of an unfinished reading were dropped."
                : "")
            + " It is opened again as soon as it is there."
            + tone(2));
  }

  @Override
  public void link(String link, LinkState state, String sentence) {
    err.println("  " + sentence + tone(state == LinkState.RETURNED ? 1 : 2));
  }
}
