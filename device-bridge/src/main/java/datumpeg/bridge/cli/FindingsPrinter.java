package datumpeg.bridge.cli;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.StageFindings;
import java.io.PrintStream;
import java.util.OptionalDouble;

/** Findings of a stage in plain text: the answer first, then causes, outcomes, notes. */
final class FindingsPrinter {
  private final PrintStream out;

  FindingsPrinter(PrintStream out) {
    this.out = out;
  }

  void print(StageFindings stage) {
    out.printf("Stage %s, %d reading(s)%n", stage.stage(), stage.readingCount());
    out.println("  " + stage.answer().sentence());
    if (!stage.answer().first().isEmpty()) {
      out.println("  First: " + stage.answer().first());
    }
    if (!stage.causes().isEmpty()) {
      out.println();
      out.println("  What is behind it");
      stage.causes().forEach(this::print);
    }
    out.println();
    table(stage);
    for (Note note : stage.notes()) {
      out.println("  Note (" + note.kind().text().replace('-', ' ') + "): " + note.text());
    }
    out.println();
  }

  private void print(Cause cause) {
    out.println("  - " + cause.sentence());
    if (!cause.action().isEmpty()) {
      out.println("    Do: " + cause.action());
    }
    out.println("    Shows in: " + String.join(", ", cause.symptoms()));
  }

  private void table(StageFindings stage) {
    if (stage.outcomes().isEmpty()) {
      return;
    }
    TextTable table = TextTable.ofWords();
    table.row("check", "target", "deviation", "± U", "limits", "sure", "verdict");
    for (Outcome outcome : stage.outcomes()) {
      table.row(
          outcome.check(),
          outcome.target(),
          LengthDisplay.signed(outcome.unit().fromSi(outcome.deviation()), 1),
          LengthDisplay.decimal(outcome.unit().fromSi(outcome.expandedUncertainty()), 1),
          outcome.limits().map(limits -> limits(limits, outcome)).orElse("none"),
          outcome.probability().isPresent()
              ? LengthDisplay.decimal(outcome.probability().getAsDouble() * 100, 1) + " %"
              : "",
          (outcome.stale() ? "stale, " : "")
              + outcome.verdict().map(Verdict::text).orElse("no limit")
              + (stage.doubted().contains(outcome) ? ", in doubt" : ""));
    }
    table.print(out, "  ");
    out.println(
        "  Millimetres"
            + (stage.outcomes().stream().allMatch(one -> one.unit() == OutcomeUnit.MILLIMETRE)
                ? ""
                : " (FF and FL: no unit)")
            + "; U at its coverage; \"sure\" is the probability that it conforms.");
    if (!stage.doubted().isEmpty()) {
      out.println(
          "  In doubt: readings it follows from contradict each other. Find out first which is right.");
    }
  }

  private static String limits(Limits limits, Outcome outcome) {
    return bound(limits.lower(), outcome) + " … " + bound(limits.upper(), outcome);
  }

  private static String bound(OptionalDouble si, Outcome outcome) {
    return si.isPresent() ? LengthDisplay.signed(outcome.unit().fromSi(si.getAsDouble()), 1) : "";
  }
}
