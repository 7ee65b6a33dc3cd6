package datumpeg.bridge.jobfile;

import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.GuardBand;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.Optional;

/** {@code [decision]}: the conformance probabilities that decide, or the guard bands. */
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
    Optional<GuardBand> guard = guard(table.get());
    table.get().refuseOthers();
    if (table.get().mistakes().count() > before) {
      return DecisionRule.DEFAULT;
    }
    try {
      return new DecisionRule(accept, reject, guard);
    } catch (IllegalArgumentException e) {
      table.get().mistake(String.valueOf(e.getMessage()));
      return DecisionRule.DEFAULT;
    }
  }

  private static Optional<GuardBand> guard(Table table) {
    Optional<Value> name = table.find("guard");
    Optional<Value> factor = table.find("guard_factor");
    if (name.isEmpty()) {
      factor.ifPresent(value -> value.mistake("'guard_factor' needs a 'guard' beside it."));
      return Optional.empty();
    }
    String asked = name.get().text().orElse(GuardBand.ISO_14253_1);
    if (!asked.equals(GuardBand.ISO_14253_1)) {
      name.get()
          .mistake(
              "'decision.guard' is \""
                  + asked
                  + "\"; expected \""
                  + GuardBand.ISO_14253_1
                  + "\", or no guard at all.");
    }
    try {
      return Optional.of(new GuardBand(asked, number(table, "guard_factor", 1)));
    } catch (IllegalArgumentException e) {
      factor.ifPresent(value -> value.mistake(String.valueOf(e.getMessage())));
      return Optional.empty();
    }
  }

  private static double number(Table table, String key, double otherwise) {
    return table.find(key).map(value -> value.number().orElse(otherwise)).orElse(otherwise);
  }
}
