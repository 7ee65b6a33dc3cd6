package datumpeg.bridge.jobfile;

import datumpeg.analysis.conform.DecisionRule;
import datumpeg.bridge.toml.Table;
import java.util.Optional;

/** {@code [decision]}: the conformance probabilities that decide. */
final class DecisionTable {
  private DecisionTable() {}

  /** The rule; the default one without a table or with mistakes in it. */
  static DecisionRule read(Optional<Table> table) {
    if (table.isEmpty()) {
      return DecisionRule.DEFAULT;
    }
    int before = table.get().mistakes().count();
    double accept = number(table.get(), "accept", DecisionRule.DEFAULT.accept());
    double reject = number(table.get(), "reject", DecisionRule.DEFAULT.reject());
    table.get().refuseOthers();
    if (table.get().mistakes().count() > before) {
      return DecisionRule.DEFAULT;
    }
    try {
      return new DecisionRule(accept, reject);
    } catch (IllegalArgumentException e) {
      table.get().mistake(String.valueOf(e.getMessage()));
      return DecisionRule.DEFAULT;
    }
  }

  private static double number(Table table, String key, double otherwise) {
    return table.find(key).map(value -> value.number().orElse(otherwise)).orElse(otherwise);
  }
}
