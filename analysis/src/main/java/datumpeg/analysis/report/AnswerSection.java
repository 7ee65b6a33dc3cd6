package datumpeg.analysis.report;

import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.drawing.VerdictMark;
import datumpeg.analysis.report.drawing.WhereDrawing;
import datumpeg.analysis.report.writing.Markup;
import datumpeg.analysis.signoff.HoldPoint;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The answer, large: can we build, what to do first, and where. */
final class AnswerSection {
  /** The more pressing first. */
  private static final List<Answer.Kind> PRESSING =
      List.of(
          Answer.Kind.STOP, Answer.Kind.MEASURE_AGAIN, Answer.Kind.NOT_DECIDED, Answer.Kind.GO_ON);

  private final Job job;
  private final List<HoldPoint> holdPoints;

  /**
   * @param holdPoints of the stages told of
   */
  AnswerSection(Job job, List<HoldPoint> holdPoints) {
    this.job = job;
    this.holdPoints = List.copyOf(holdPoints);
  }

  void write(Markup page, List<StageFindings> stages, Optional<String> asked) {
    page.open("section", "class", "answer");
    if (stages.isEmpty()) {
      nothing(page, asked);
    } else {
      StageFindings first = mostPressing(stages);
      large(page, first, stages.size() > 1);
      DrawingSection.write(page, WhereDrawing.of(job.setOut(), first));
      others(page, stages, first);
    }
    page.close();
  }

  private void nothing(Markup page, Optional<String> asked) {
    page.element(
        "p",
        asked
            .map(stage -> "Nothing was measured at this stage yet (" + stage + ").")
            .orElse("Nothing was measured in this job yet."),
        "class",
        "sentence");
    page.element("p", "First: measure. Until then this page decides nothing.", "class", "first");
  }

  /** Of the most pressing answers, the one of the latest stage: the work stands there. */
  static StageFindings mostPressing(List<StageFindings> stages) {
    StageFindings best = stages.get(0);
    for (StageFindings stage : stages) {
      if (rank(stage) <= rank(best)) {
        best = stage;
      }
    }
    return best;
  }

  private static int rank(StageFindings stage) {
    return PRESSING.indexOf(stage.answer().kind());
  }

  private void large(Markup page, StageFindings stage, boolean among) {
    Answer answer = stage.answer();
    if (among) {
      page.element("p", "Stage " + StageTitle.of(job, stage.stage()));
    }
    page.open("p", "class", "sentence");
    mark(page, stage);
    page.words(byTheNumbers(stage) + answer.sentence()).close();
    held(stage)
        .ifPresent(
            point ->
                page.open("p", "class", "first")
                    .element("b", "Hold point: ")
                    .words(HoldPointSection.sentence(point))
                    .close());
    if (!answer.first().isBlank()) {
      page.open("p", "class", "first").element("b", "First: ").words(answer.first()).close();
    }
  }

  private void others(Markup page, List<StageFindings> stages, StageFindings told) {
    if (stages.size() < 2) {
      return;
    }
    page.element("p", "The other stages:").open("ul");
    stages.stream()
        .filter(stage -> !stage.equals(told))
        .forEach(
            stage -> {
              page.open("li");
              mark(page, stage);
              page.element("b", StageTitle.of(job, stage.stage()) + ": ");
              page.words(byTheNumbers(stage) + stage.answer().sentence());
              held(stage).ifPresent(point -> page.words(" " + capital(point)));
              page.close();
            });
    page.close();
  }

  /** What the numbers allow the hold point may not. */
  private String byTheNumbers(StageFindings stage) {
    return isHeldUp(stage) ? "Not done, the hold point is open. By the numbers: " : "";
  }

  private boolean isHeldUp(StageFindings stage) {
    return stage.answer().kind() == Answer.Kind.GO_ON && held(stage).isPresent();
  }

  private static String capital(HoldPoint point) {
    String sentence = HoldPointSection.sentence(point);
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }

  /** The hold point of a stage, where work must not go past it. */
  private Optional<HoldPoint> held(StageFindings stage) {
    return holdPoints.stream()
        .filter(point -> point.stage().id().equals(stage.stage()) && point.state().holds())
        .findFirst();
  }

  /** A stage that is held is not marked as done, whatever its numbers say. */
  private void mark(Markup page, StageFindings stage) {
    Optional<Verdict> shape =
        isHeldUp(stage) ? Optional.of(Verdict.UNDECIDED) : shape(stage.answer().kind());
    page.open("span", "class", "mark").append(VerdictMark.inline(shape)).close();
    page.words(" ");
  }

  private static Optional<Verdict> shape(Answer.Kind kind) {
    return switch (kind) {
      case GO_ON -> Optional.of(Verdict.CONFORMING);
      case MEASURE_AGAIN -> Optional.of(Verdict.UNDECIDED);
      case STOP -> Optional.of(Verdict.NONCONFORMING);
      case NOT_DECIDED -> Optional.empty();
    };
  }
}
