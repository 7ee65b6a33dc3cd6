package datumpeg.analysis.report;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.drawing.VerdictMark;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.LengthFigures;
import datumpeg.analysis.report.writing.Markup;
import datumpeg.analysis.report.writing.OutcomeFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Every outcome of a stage: figures in one row, where they come from in the next. */
final class OutcomeTable {
  private static final String COLUMNS = "6";

  private final StageFindings findings;
  private final LengthFigures figures;
  private final ReadingNumbers numbers;

  OutcomeTable(StageFindings findings, LengthFigures figures, ReadingNumbers numbers) {
    this.findings = findings;
    this.figures = figures;
    this.numbers = numbers;
  }

  void write(Markup page) {
    page.element("h3", "Outcomes");
    if (findings.outcomes().isEmpty()) {
      page.element("p", "The readings of this stage give no outcome yet; the notes say why.");
      return;
    }
    if (findings.outcomes().stream().allMatch(outcome -> outcome.limits().isEmpty())) {
      page.element(
          "p",
          "The job gives no limits for what was measured here: values stand without verdicts, and"
              + " nothing is decided.");
    }
    page.element(
        "p",
        "Deviations, uncertainties and limits in "
            + figures.unitWord()
            + (findings.outcomes().stream().allMatch(one -> one.unit() == OutcomeUnit.MILLIMETRE)
                ? ""
                : " (FF and FL: no unit)")
            + ". The probability is that of conforming.",
        "class",
        "lead");
    page.open("table");
    head(page);
    findings.outcomes().forEach(outcome -> body(page, outcome));
    page.close();
  }

  private void head(Markup page) {
    page.open("thead").open("tr");
    page.element("th", "What", "class", "what");
    page.element("th", "Plan", "class", "number");
    page.element("th", "Measured", "class", "number");
    page.element("th", "Deviation ± U", "class", "number");
    page.element("th", "Limits", "class", "number");
    page.element("th", "Verdict, probability");
    page.close().close();
  }

  private void body(Markup page, Outcome outcome) {
    OutcomeFigures shown = new OutcomeFigures(figures, outcome.unit());
    page.open("tbody").open("tr");
    page.open("td").element("span", CheckWords.check(outcome.check()), "class", "name");
    page.words(", " + CheckWords.target(outcome.check(), outcome.target())).close();
    number(page, nominal(outcome, shown));
    number(
        page, isSize(outcome) ? shown.size(outcome.measured()) : shown.number(outcome.measured()));
    number(
        page,
        shown.signed(outcome.deviation()) + " ± " + shown.number(outcome.expandedUncertainty()));
    number(page, outcome.limits().map(limits -> limits(limits, shown)).orElse("none"));
    verdict(page, outcome);
    page.close();
    page.open("tr").open("td", "class", "more", "colspan", COLUMNS);
    page.words(String.join(" ", origins(outcome)));
    page.close().close().close();
  }

  private static void number(Markup page, String text) {
    page.element("td", text, "class", "number");
  }

  private static String nominal(Outcome outcome, OutcomeFigures shown) {
    OptionalDouble nominal = outcome.nominal();
    if (nominal.isEmpty()) {
      return "none";
    }
    return isSize(outcome) ? shown.size(nominal.getAsDouble()) : "0";
  }

  /** A spacing or a span; what should be nothing at all is shown like a deviation. */
  private static boolean isSize(Outcome outcome) {
    return outcome.nominal().orElse(0) != 0;
  }

  private static String limits(Limits limits, OutcomeFigures shown) {
    if (limits.lower().isPresent()
        && limits.upper().isPresent()
        && limits.upper().getAsDouble() == -limits.lower().getAsDouble()) {
      return "± " + shown.number(limits.upper().getAsDouble());
    }
    String upper = limits.upper().isPresent() ? shown.signed(limits.upper().getAsDouble()) : "none";
    return limits.lower().isPresent()
        ? shown.signed(limits.lower().getAsDouble()) + " to " + upper
        : "at most " + upper.replace("+", "");
  }

  private static void verdict(Markup page, Outcome outcome) {
    page.open("td", "class", "verdict").open("span", "class", "mark");
    page.append(VerdictMark.inline(outcome.verdict())).close().words(" ");
    String word = CheckWords.verdict(outcome.verdict());
    page.element("span", word, "class", outcome.verdict().isPresent() ? word : "none");
    outcome.probability().ifPresent(value -> page.empty("br").words(percent(value)));
    page.close();
  }

  /** Never rounded to certainty. */
  static String percent(double probability) {
    if (probability < 0.001) {
      return "< 0.1 %";
    }
    return probability > 0.999 ? "> 99.9 %" : LengthDisplay.decimal(probability * 100, 1) + " %";
  }

  private List<String> origins(Outcome outcome) {
    List<String> parts = new ArrayList<>();
    parts.add("k = " + LengthDisplay.decimal(outcome.coverage(), 1) + ".");
    outcome.limits().ifPresent(limits -> parts.add("Limits: " + limits.source() + "."));
    if (!outcome.readingIds().isEmpty()) {
      parts.add("Readings: " + numbers.text(outcome.readingIds()) + ".");
    }
    if (outcome.round() > 1) {
      parts.add("Round " + outcome.round() + ".");
    }
    if (!outcome.aside().isBlank()) {
      parts.add(sentence(capital(outcome.aside())));
    }
    if (outcome.stale()) {
      parts.add("STALE: something this stands on was moved since. Measure again.");
    }
    remedy(outcome, parts);
    return parts;
  }

  /** What belongs to a cause is told with the cause, and only pointed at here. */
  private void remedy(Outcome outcome, List<String> parts) {
    String symptom = outcome.check() + " " + outcome.target();
    List<Cause> causes = findings.causes();
    for (int i = 0; i < causes.size(); i++) {
      if (causes.get(i).symptoms().contains(symptom)) {
        parts.add("See cause " + (i + 1) + " of this stage.");
        return;
      }
    }
    if (!outcome.remedy().isBlank()) {
      parts.add("Do: " + sentence(outcome.remedy()));
    }
  }

  private static String capital(String words) {
    int first = words.offsetByCodePoints(0, 1);
    return words.substring(0, first).toUpperCase(Locale.ROOT) + words.substring(first);
  }

  private static String sentence(String words) {
    return words.endsWith(".") ? words : words + ".";
  }
}
