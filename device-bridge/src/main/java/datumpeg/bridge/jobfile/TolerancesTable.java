package datumpeg.bridge.jobfile;

import datumpeg.analysis.conform.LimitRow;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.bridge.limits.LimitsTable;
import datumpeg.bridge.limits.RuleText;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** {@code [tolerances]}: one limit a check. */
final class TolerancesTable {
  /** Who says so when the job file gives a bare number. */
  static final String JOB_FILE = "job file";

  private static final Pattern LENGTH = Pattern.compile("\\s*[-+.,0-9].*");

  private final LimitsTable limits;

  private TolerancesTable(LimitsTable limits) {
    this.limits = limits;
  }

  /** The tolerances without mistakes, in the order of the checks. */
  static Map<String, Tolerance> read(Optional<Table> table, LimitsTable limits) {
    Map<String, Tolerance> tolerances = new LinkedHashMap<>();
    if (table.isPresent()) {
      CheckNames.ALL.forEach(
          check ->
              table
                  .get()
                  .find(check)
                  .flatMap(new TolerancesTable(limits)::tolerance)
                  .ifPresent(tolerance -> tolerances.put(check, tolerance)));
      table.get().refuseOthers();
    }
    return tolerances;
  }

  private Optional<Tolerance> tolerance(Value value) {
    if (value.isTable()) {
      return value.table().flatMap(this::ofTable);
    }
    String text = value.isText() ? value.text().orElse("") : "";
    Optional<String> trouble = LimitLine.trouble(text);
    if (trouble.isPresent()) {
      value.mistake("'" + value.name() + "' is \"" + text + "\", " + trouble.get() + ".");
      return Optional.empty();
    }
    if (text.isEmpty() || LENGTH.matcher(text).matches()) {
      return RuleText.symmetric(value).map(rule -> new Tolerance(rule, JOB_FILE));
    }
    return row(value).map(LimitRow::tolerance);
  }

  private Optional<Tolerance> ofTable(Table table) {
    int before = table.mistakes().count();
    Optional<String> source = table.find("source").flatMap(Value::text);
    Optional<Value> ruleId = table.find("rule");
    Optional<Tolerance> tolerance;
    if (ruleId.isPresent()) {
      tolerance =
          row(ruleId.get())
              .map(row -> new Tolerance(row.rule(), source.orElse(row.printedSource())));
    } else {
      Optional<LimitRule> rule = RuleText.read(table);
      tolerance = rule.map(given -> new Tolerance(given, source.orElse(JOB_FILE)));
    }
    table.refuseOthers();
    return table.mistakes().count() == before ? tolerance : Optional.empty();
  }

  private Optional<LimitRow> row(Value value) {
    String id = value.text().orElse("");
    Optional<LimitRow> row = limits.find(id);
    if (row.isEmpty() && value.isText()) {
      value.mistake(
          "'"
              + value.name()
              + "' is \""
              + id
              + "\", which is neither a length such as \"10 mm\" nor an id of the limits table; "
              + Nearest.hint(id, limits.ids())
              + ".");
    }
    return row;
  }
}
