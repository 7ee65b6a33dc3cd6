package datumpeg.analysis.reduce;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.JointConformance;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.remedy.LinePlacement;
import java.util.List;
import java.util.Optional;

/** The sentence a reader is given first: can we go on, and what to do first. */
final class Answers {
  private final Stage stage;

  Answers(Stage stage) {
    this.stage = stage;
  }

  Answer of(
      List<Outcome> outcomes,
      List<Cause> causes,
      List<Note> notes,
      Optional<LinePlacement> placement) {
    Optional<Note> doubt =
        notes.stream().filter(note -> note.kind() == Note.Kind.SLIP_SUSPECTED).findFirst();
    Optional<LinePlacement> lines = doubt.isPresent() ? Optional.empty() : placement;
    Answer bare = bare(outcomes, causes, doubt, lines);
    return new Answer(
        lines.filter(found -> found.is(Verdict.NONCONFORMING)).isPresent()
            ? Answer.Kind.STOP
            : bare.kind(),
        lines.map(found -> found.sentence() + " ").orElse("") + bare.sentence(),
        bare.first()
            + lines
                .map(Answers::next)
                .filter(next -> !next.isEmpty())
                .map(next -> (bare.first().isEmpty() ? "" : " ") + next)
                .orElse(""));
  }

  private static String next(LinePlacement lines) {
    if (lines.is(Verdict.UNDECIDED)) {
      return "Read the sides and diagonals of the slab once more before any line is snapped.";
    }
    return lines.fits() ? "Mark the lines (mm): " + lines.marks() + "." : "";
  }

  private Answer bare(
      List<Outcome> outcomes,
      List<Cause> causes,
      Optional<Note> doubt,
      Optional<LinePlacement> lines) {
    long out = outcomes.stream().filter(o -> !o.stale() && o.is(Verdict.NONCONFORMING)).count();
    long close =
        outcomes.stream().filter(o -> o.stale() || o.is(Verdict.UNDECIDED)).count()
            + lines.stream().filter(found -> found.is(Verdict.UNDECIDED)).count();
    long decided = outcomes.stream().filter(o -> o.verdict().isPresent()).count();
    String first = doubt.map(Note::text).orElse(causes.isEmpty() ? "" : causes.get(0).action());
    if (out > 0) {
      return new Answer(
          Answer.Kind.STOP,
          no(lines)
              + causes.get(0).sentence()
              + (causes.size() > 1 ? " " + more(causes.size() - 1) : ""),
          first);
    }
    if (close > 0 || doubt.isPresent()) {
      return new Answer(
          Answer.Kind.MEASURE_AGAIN,
          notYet(close, doubt.isPresent()) + (doubt.isPresent() ? "" : together(outcomes)),
          first);
    }
    if (decided == 0) {
      return new Answer(
          Answer.Kind.NOT_DECIDED,
          outcomes.isEmpty()
              ? "Nothing to decide yet: no check has all it needs."
              : "Values without verdicts: the job gives no limits for what was measured.",
          "");
    }
    return new Answer(
        Answer.Kind.GO_ON, yes(decided, outcomes.size() - decided) + together(outcomes), "");
  }

  /** The whole stage's probability, where it has more than one outcome to take together. */
  private static String together(List<Outcome> outcomes) {
    JointConformance joint = JointConformance.of(outcomes);
    return joint.count() < 2 ? "" : " That all conform is " + joint.words() + " sure.";
  }

  private boolean isSlab() {
    return stage.id().equals("arrival");
  }

  private String no(Optional<LinePlacement> lines) {
    if (!isSlab()) {
      return "Stop. ";
    }
    return lines.filter(LinePlacement::fits).isPresent()
        ? "But the slab is not as ordered. "
        : "Not as it is. ";
  }

  private String notYet(long close, boolean doubtful) {
    String lead = isSlab() ? "Cannot tell yet whether to build on it: " : "Not yet: ";
    String doubt = doubtful ? "readings contradict each other" : "";
    String open =
        close == 0
            ? ""
            : (doubtful ? ", and " : "nothing is out of limits, but ")
                + (close == 1 ? "one outcome is" : close + " outcomes are")
                + " too close to call or stale";
    return lead + doubt + open + ".";
  }

  private String yes(long decided, long withoutLimits) {
    String all = decided == 1 ? "the one outcome" : "all " + decided + " outcomes";
    return (isSlab() ? "Yes, build on it: " : "Go on: ")
        + all
        + " with limits conform"
        + (decided == 1 ? "s" : "")
        + (withoutLimits > 0 ? "; " + withoutLimits + " more have no limits." : ".");
  }

  private static String more(int count) {
    return count == 1
        ? "One more thing is listed below."
        : count + " more things are listed below.";
  }
}
