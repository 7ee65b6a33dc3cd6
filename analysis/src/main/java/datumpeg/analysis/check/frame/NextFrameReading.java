package datumpeg.analysis.check.frame;

import datumpeg.analysis.adjust.NextObservation;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.FrameRow;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The reading of the frames to take next, from the ground: a distance along a row of feet or across
 * between two feet, or a lean, each read as the last of its kind was. Asked for while something is
 * undecided: where nothing checks the frames the one that checks them best, else the one that helps
 * the worst undecided outcome most.
 */
final class NextFrameReading {
  private final Job job;
  private final FrameNetwork frames;
  private final StageReadings stage;
  private final Optional<Reading> lastOfRow;
  private final Optional<Reading> lastSpan;
  private final Optional<Reading> lastTilt;

  NextFrameReading(Job job, FrameNetwork frames, StageReadings stage) {
    this.job = job;
    this.frames = frames;
    this.stage = stage;
    this.lastOfRow = last(FrameRow::holds);
    this.lastSpan = last(ClearDistances::isClearSpan);
    this.lastTilt =
        last(
            target ->
                target.quantity() == MeasuredQuantity.TILT
                    && target.first().feature().equals("column"));
  }

  Optional<Note> note(List<Outcome> outcomes) {
    Map<String, Linearised> wanted = new LinkedHashMap<>();
    outcomes.stream()
        .filter(outcome -> outcome.is(Verdict.UNDECIDED))
        .forEach(outcome -> behind(outcome).ifPresent(q -> wanted.put(words(outcome), q)));
    if (wanted.isEmpty() || !frames.agrees()) {
      return Optional.empty();
    }
    List<NextObservation.Candidate> candidates = new ArrayList<>(distances());
    candidates.addAll(leans());
    return NextObservation.among(frames.fit(), wanted, candidates).map(NextFrameReading::words);
  }

  private static String words(Outcome outcome) {
    String[] parts = outcome.target().split("/", -1);
    return switch (outcome.check()) {
      case "column-plumb" -> "the lean of column " + parts[0] + " " + parts[1] + " the building";
      case "clear-span" -> "the clear span of frame " + parts[0] + " at the " + parts[1];
      default -> "the spacing " + parts[0].replace("-", " to ") + " at the " + parts[1];
    };
  }

  /** What an outcome is decided on, where the frames' network knows it. */
  private Optional<Linearised> behind(Outcome outcome) {
    String[] parts = outcome.target().split("[-/]", -1);
    return switch (outcome.check()) {
      case "column-plumb" ->
          GridMark.parse(parts[0]).flatMap(mark -> frames.leanAtEave(mark, axis(parts[1])));
      case "clear-span" -> frames.span(parts[1], Integer.parseInt(parts[0]));
      case "frame-spacing" ->
          GridMark.parse(parts[0])
              .flatMap(
                  mark ->
                      frames.spacing(
                          new FrameRow(parts[2], Character.toString(mark.letter())),
                          mark.number(),
                          mark.number() + 1));
      default -> Optional.empty();
    };
  }

  private static Axis axis(String text) {
    return text.equals(Axis.ALONG.text()) ? Axis.ALONG : Axis.ACROSS;
  }

  /** Along the rows of feet, from each frame to each, and across between the feet of each frame. */
  private List<NextObservation.Candidate> distances() {
    List<NextObservation.Candidate> candidates = new ArrayList<>();
    SetOut setOut = job.setOut();
    List<Integer> numbers = setOut.portalFrameNumbers();
    for (int from : numbers) {
      for (char letter : new char[] {'A', 'B'}) {
        FrameRow row = new FrameRow("base", Character.toString(letter));
        for (int to : numbers.stream().filter(number -> number > from).toList()) {
          Target target = feet(letter, from, letter, to);
          frames
              .spacing(row, from, to)
              .flatMap(quantity -> distance(target, quantity, lastOfRow, Axis.ALONG))
              .ifPresent(candidates::add);
        }
      }
      frames
          .span("base", from)
          .flatMap(
              quantity -> distance(feet('A', from, 'B', from), quantity, lastSpan, Axis.ACROSS))
          .ifPresent(candidates::add);
    }
    return candidates;
  }

  private static Target feet(char letter, int number, char otherLetter, int otherNumber) {
    return Target.distance(
        PointName.at("base", new GridMark(letter, number)),
        PointName.at("base", new GridMark(otherLetter, otherNumber)));
  }

  private Optional<NextObservation.Candidate> distance(
      Target target, Linearised quantity, Optional<Reading> like, Axis axis) {
    return like.map(
        reading ->
            new NextObservation.Candidate(
                "measure " + TargetWords.of(target),
                quantity,
                stage.marked(
                    stage.marked(
                        stage.foreseen(reading, Math.abs(quantity.value())),
                        target.first(),
                        axis.text(),
                        -1),
                    target.second(),
                    axis.text(),
                    1)));
  }

  /** Each lean once more, on either face of the tilt meter last used. */
  private List<NextObservation.Candidate> leans() {
    List<NextObservation.Candidate> candidates = new ArrayList<>();
    for (int number : job.setOut().portalFrameNumbers()) {
      for (char letter : new char[] {'A', 'B'}) {
        for (Axis axis : Axis.values()) {
          GridMark mark = new GridMark(letter, number);
          Optional<Linearised> lean = frames.leanAtEave(mark, axis);
          for (int face = 1; face <= 2 && lean.isPresent(); face++) {
            tilt(mark, axis, lean.get(), face).ifPresent(candidates::add);
          }
        }
      }
    }
    return candidates;
  }

  private Optional<NextObservation.Candidate> tilt(
      GridMark mark, Axis axis, Linearised lean, int face) {
    double scale = (face == 2 ? -1 : 1) / job.setOut().building().eaveHeightMetres();
    String column = mark.text() + "/" + axis.text();
    Target tilt = Target.along(MeasuredQuantity.TILT, PointName.at("column", mark), axis);
    return lastTilt.map(
        reading ->
            new NextObservation.Candidate(
                "read " + TargetWords.of(tilt) + " on face " + face,
                lean.scaled(scale),
                frames.bowed(stage.foreseen(reading, 0), column, reading, face)));
  }

  private Optional<Reading> last(Predicate<Target> like) {
    return stage.where(like).stream()
        .filter(reading -> frames.holds(List.of(reading)))
        .max(Comparator.comparing(Reading::at).thenComparing(Reading::id));
  }

  private static Note words(NextObservation next) {
    return new Note(
        Note.Kind.NEXT_MEASUREMENT,
        switch (next.reason()) {
          case MAKES_CHECKABLE ->
              "Nothing checks the leans, spacings and clear spans against each other; a slip would"
                  + " not show. Next, "
                  + next.name()
                  + ".";
          case REDUCES_WORST_POINT ->
              "Next, "
                  + next.name()
                  + (next.name().startsWith("read ") ? " once more" : "")
                  + ": it helps most where least is known, bringing "
                  + next.worst()
                  + " from ± "
                  + Millimetres.of(Estimate.COVERAGE_FACTOR * next.now())
                  + " to ± "
                  + Millimetres.of(Estimate.COVERAGE_FACTOR * next.then())
                  + ".";
        },
        List.of());
  }
}
