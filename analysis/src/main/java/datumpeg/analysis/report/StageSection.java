package datumpeg.analysis.report;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.drawing.VerdictMark;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.LengthFigures;
import datumpeg.analysis.report.writing.Markup;
import datumpeg.analysis.report.writing.OutcomeFigures;
import java.util.List;
import java.util.Optional;

/** One stage: causes, lines to snap, drawings, table, notes. */
final class StageSection {
  private final Job job;
  private final StageFindings findings;
  private final LengthFigures figures;
  private final ReadingNumbers numbers;

  StageSection(Job job, StageFindings findings, LengthFigures figures, ReadingNumbers numbers) {
    this.job = job;
    this.findings = findings;
    this.figures = figures;
    this.numbers = numbers;
  }

  /**
   * Writes the stage.
   *
   * @param among whether other stages stand on the page too, so that this one needs its heading
   */
  void write(Markup page, boolean among) {
    page.open("section", "class", among ? "stage" : "only-stage");
    if (among) {
      page.element("h2", "Stage " + StageTitle.of(job, findings.stage()));
    }
    causes(page);
    boolean doubted =
        findings.notes().stream().anyMatch(note -> note.kind() == Note.Kind.SLIP_SUSPECTED);
    findings.placement().ifPresent(lines -> new LinesTable(figures).write(page, lines, doubted));
    new DrawingSection(job, findings, figures).write(page);
    new OutcomeTable(findings, figures, numbers).write(page);
    new NoteSection(numbers).write(page, findings.notes());
    page.close();
  }

  private void causes(Markup page) {
    List<Cause> causes = findings.causes();
    if (causes.isEmpty()) {
      return;
    }
    page.element("h3", "What is out or undecided, and what to do");
    for (int i = 0; i < causes.size(); i++) {
      cause(page, i + 1, causes.get(i));
    }
  }

  private void cause(Markup page, int number, Cause cause) {
    page.open("div", "class", "cause");
    page.open("p").open("span", "class", "mark");
    page.append(VerdictMark.inline(Optional.of(cause.kind()))).close();
    page.words(" ").element("b", number + ". " + cause.sentence());
    page.words(" (" + cause.kind().text() + ")").close();
    if (!cause.action().isBlank()) {
      page.open("p").element("b", "Do: ").words(cause.action()).close();
    }
    List<String> symptoms = cause.symptoms().stream().map(this::symptom).toList();
    if (!symptoms.isEmpty()) {
      page.element("p", "It shows in: " + String.join("; ", symptoms) + ".", "class", "facts");
    }
    page.close();
  }

  private String symptom(String symptom) {
    return find(symptom)
        .map(
            outcome ->
                CheckWords.phrase(outcome)
                    + " "
                    + new OutcomeFigures(figures, outcome.unit())
                        .deviation(outcome.deviation(), outcome.expandedUncertainty()))
        .orElse(symptom);
  }

  private Optional<Outcome> find(String symptom) {
    return findings.outcomes().stream()
        .filter(outcome -> symptom.equals(outcome.check() + " " + outcome.target()))
        .findFirst();
  }
}
