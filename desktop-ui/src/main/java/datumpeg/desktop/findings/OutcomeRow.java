package datumpeg.desktop.findings;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.List;

/**
 * An outcome as the table writes it.
 *
 * @param deviation with its expanded uncertainty
 * @param verdict the word for how it stands
 * @param limitSource who says so; empty where there is no limit
 * @param readingIds what it was found from
 * @param spoken the whole row in one sentence, for a screen reader
 */
record OutcomeRow(
    String check,
    String target,
    String nominal,
    String measured,
    String deviation,
    String limits,
    String probability,
    Standing standing,
    String verdict,
    String remedy,
    String limitSource,
    List<String> readingIds,
    String spoken) {
  OutcomeRow {
    readingIds = List.copyOf(readingIds);
  }

  /** What was checked of what. */
  String subject() {
    return check + " " + target;
  }

  static OutcomeRow of(Outcome outcome, Words words) {
    Figures figures = words.figures();
    Standing standing = Standing.of(outcome);
    String check = words.check(outcome.check());
    String verdict = words.standing(standing);
    return new OutcomeRow(
        check,
        outcome.target(),
        figures.nominal(outcome),
        figures.measured(outcome),
        figures.deviationWithUncertainty(outcome),
        figures.limits(outcome),
        Figures.probability(outcome),
        standing,
        verdict,
        words.told(remedy(outcome)),
        outcome.limits().map(Limits::source).orElse(""),
        outcome.readingIds(),
        words.text(
            "findings.spoken",
            check,
            outcome.target(),
            figures.deviation(outcome),
            figures.uncertainty(outcome),
            verdict));
  }

  private static String remedy(Outcome outcome) {
    if (outcome.aside().isEmpty()) {
      return outcome.remedy();
    }
    return outcome.remedy().isEmpty()
        ? outcome.aside()
        : outcome.remedy() + " (" + outcome.aside() + ")";
  }
}
