package datumpeg.bridge.cli;

import datumpeg.analysis.conform.LimitRow;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonNull;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonValue;
import datumpeg.bridge.limits.LimitsTable;
import datumpeg.bridge.mistake.Nearest;
import java.io.PrintStream;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code limits list}, {@code limits show}. */
@Command(
    name = "limits",
    description = "The table of permitted deviations a job may name, with their sources.")
final class LimitsCommand {
  private final DatumpegCommand program;

  LimitsCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Command(name = "list", description = "List the rows.")
  int list() {
    LimitsTable limits = LimitsTable.ofProgram();
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put(
                  "limits",
                  JsonArray.of(
                      limits.rows().stream()
                          .map(row -> json(JsonObject.builder(), row, OptionalDouble.empty()))
                          .map(JsonObject.Builder::build)))
              .build());
      return 0;
    }
    PrintStream out = program.console().out();
    out.println(
        "No row stands in for a code: what binds a job is its specification and its engineer.");
    TextTable table = TextTable.ofWords();
    limits
        .rows()
        .forEach(row -> table.row(row.id(), row.printedSource(), RuleWords.of(row.rule())));
    table.print(out, "");
    return 0;
  }

  @Command(name = "show", description = "Show one row, and what it permits at a size.")
  int show(
      @Parameters(paramLabel = "ID", description = "The row's id.") String id,
      @Option(
              names = "--size",
              paramLabel = "LENGTH",
              description = "The size the rule is applied to, such as \"6 m\".")
          @Nullable String size) {
    LimitsTable limits = LimitsTable.ofProgram();
    LimitRow row =
        limits
            .find(id)
            .orElseThrow(
                () ->
                    new InputException(
                        "There is no limit '" + id + "'; " + Nearest.hint(id, limits.ids()) + "."));
    OptionalDouble metres = size == null ? OptionalDouble.empty() : OptionalDouble.of(metres(size));
    if (program.json()) {
      Records.print(program, json(JsonObject.builder().put("format", 1), row, metres).build());
    } else {
      print(row, metres);
    }
    return 0;
  }

  private static double metres(String size) {
    try {
      return Quantity.lengthMetres(size);
    } catch (QuantityFormatException e) {
      throw new InputException("--size: " + e.getMessage(), e);
    }
  }

  private void print(LimitRow row, OptionalDouble sizeMetres) {
    PrintStream out = program.console().out();
    TextTable table =
        TextTable.ofWords()
            .row("id", row.id())
            .row("rule", RuleWords.of(row.rule()))
            .row("source", row.printedSource())
            .row("known from", row.confidence().words())
            .row("applies to", row.note());
    if (sizeMetres.isPresent()) {
      double size = sizeMetres.getAsDouble();
      table.row(
          "at " + RuleWords.millimetres(size),
          permitted(row.rule().lowerMetres(size), row.rule().upperMetres(size)));
    }
    table.print(out, "");
  }

  private static JsonObject.Builder json(
      JsonObject.Builder json, LimitRow row, OptionalDouble sizeMetres) {
    json.put("id", row.id())
        .put("rule", RuleWords.of(row.rule()))
        .put("source", row.source())
        .put("clause", row.clause())
        .put("edition", row.edition())
        .put("seen", row.seen())
        .put("confidence", row.confidence().text())
        .put("printedSource", row.printedSource())
        .put("note", row.note());
    if (sizeMetres.isPresent()) {
      double size = sizeMetres.getAsDouble();
      json.put("unit", "mm")
          .put("size", JobJson.millimetres(size))
          .put("lower", limit(row.rule().lowerMetres(size)))
          .put("upper", limit(row.rule().upperMetres(size)));
    }
    return json;
  }

  private static JsonValue limit(double metres) {
    return Double.isInfinite(metres) ? new JsonNull() : JobJson.millimetres(metres);
  }

  private static String permitted(double lowerMetres, double upperMetres) {
    return Double.isInfinite(lowerMetres) || Double.isInfinite(upperMetres)
        ? RuleWords.of(new LimitRule.Constant(lowerMetres, upperMetres))
        : RuleWords.millimetres(lowerMetres) + " to +" + RuleWords.millimetres(upperMetres);
  }
}
