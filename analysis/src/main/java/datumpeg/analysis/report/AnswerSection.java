package datumpeg.analysis.report;

import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.reduce.Answer;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.drawing.VerdictMark;
import datumpeg.analysis.report.drawing.WhereDrawing;
import datumpeg.analysis.report.writing.Markup;
import java.util.List;
import java.util.Optional;

/** The answer, large: can we build, what to do first, and where. */
final class AnswerSection {
  /** The more pressing first. */
  private static final List<Answer.Kind> PRESSING =
      List.of(
          Answer.Kind.STOP, Answer.Kind.MEASURE_AGAIN, Answer.Kind.NOT_DECIDED, Answer.Kind.GO_ON);

  private final Job job;

  AnswerSection(Job job) {
    this.job = job;
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
    mark(page, answer);
    page.words(answer.sentence()).close();
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
              mark(page, stage.answer());
              page.element("b", StageTitle.of(job, stage.stage()) + ": ");
              page.words(stage.answer().sentence()).close();
            });
    page.close();
  }

  private static void mark(Markup page, Answer answer) {
    page.open("span", "class", "mark").append(VerdictMark.inline(shape(answer.kind()))).close();
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
