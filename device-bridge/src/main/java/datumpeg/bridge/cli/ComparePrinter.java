package datumpeg.bridge.cli;

import datumpeg.analysis.compare.ComparedGroup;
import datumpeg.analysis.compare.Comparison;
import datumpeg.analysis.quantity.LengthDisplay;
import java.io.PrintStream;
import java.util.List;
import java.util.OptionalDouble;

/** Comparisons in plain text. */
final class ComparePrinter {
  private final PrintStream out;

  ComparePrinter(PrintStream out) {
    this.out = out;
  }

  void print(List<Comparison> comparisons, List<String> unread) {
    if (comparisons.isEmpty()) {
      out.println("The record has no outcomes yet, so there is nothing to compare.");
    }
    comparisons.forEach(this::print);
    unread.forEach(out::println);
  }

  private void print(Comparison comparison) {
    out.printf(
        "%s by %s, %d job(s)%n",
        comparison.question().filter().check(), comparison.factor().word(), comparison.jobCount());
    TextTable table =
        TextTable.ofNumbers()
            .row(
                comparison.factor().word(),
                "jobs",
                "outcomes",
                "mean ± interval",
                "spread of jobs",
                "without measuring",
                "scatter in a job");
    comparison.groups().forEach(group -> table.row(group(group, comparison.unit())));
    table.print(out, "  ");
    if (comparison.severalLevels() > 0) {
      out.println(
          "  Left out: "
              + comparison.severalLevels()
              + " outcome(s) that belong to several "
              + comparison.factor().plural()
              + " at once.");
    }
    comparison.sentences().forEach(sentence -> out.println("  " + sentence));
    out.println();
  }

  private static List<String> group(ComparedGroup group, String unit) {
    return List.of(
        group.name().isEmpty() ? "(not named)" : group.name(),
        Integer.toString(group.jobCount()),
        Integer.toString(group.outcomeCount()),
        LengthDisplay.signed(group.mean(), 1)
            + (group.halfWidth().isPresent() ? " ± " + number(group.halfWidth()) : "")
            + " "
            + unit,
        number(group.observedSpread()),
        number(group.ownSpread()),
        number(group.meanScatter()));
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? LengthDisplay.decimal(value.getAsDouble(), 1) : "-";
  }
}
