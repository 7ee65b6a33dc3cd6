package datumpeg.bridge.jobfile;

import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * {@code [stages.ID]}: the job's own stages, put in among the standard ones; a table of a standard
 * stage's name adds checks and questions to it.
 */
final class StagesTable {
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,60}");

  /** A stage and the one it comes after. */
  private record Placed(Stage stage, Value after, String afterId) {}

  private StagesTable() {}

  /** All stages in the order of the work; those with mistakes are left out. */
  static List<Stage> read(Optional<Table> table) {
    List<Placed> own = new ArrayList<>();
    List<String> ids = table.map(Table::keys).orElse(List.of());
    Map<String, Stage> standard = new LinkedHashMap<>();
    Stage.STANDARD.forEach(stage -> standard.put(stage.id(), stage));
    for (String id : ids) {
      if (standard.containsKey(id)) {
        table
            .flatMap(given -> given.findTable(id))
            .ifPresent(given -> standard.computeIfPresent(id, (key, of) -> extended(of, given)));
        continue;
      }
      table
          .flatMap(given -> given.findTable(id))
          .flatMap(given -> stage(id, given))
          .ifPresent(own::add);
    }
    List<Stage> ordered = new ArrayList<>();
    standard.values().forEach(stage -> add(stage, own, ordered));
    own.stream()
        .filter(placed -> !ordered.contains(placed.stage))
        .forEach(placed -> misplaced(placed, ids));
    return ordered;
  }

  private static void add(Stage stage, List<Placed> own, List<Stage> ordered) {
    ordered.add(stage);
    own.stream()
        .filter(placed -> placed.afterId.equals(stage.id()))
        .forEach(placed -> add(placed.stage, own, ordered));
  }

  private static void misplaced(Placed placed, List<String> ownIds) {
    List<String> known = new ArrayList<>(Stage.STANDARD.stream().map(Stage::id).toList());
    known.addAll(ownIds);
    known.remove(placed.stage.id());
    placed.after.mistake(
        known.contains(placed.afterId)
            ? "The stage "
                + placed.stage.id()
                + " comes after "
                + placed.afterId
                + ", which comes after no standard stage itself."
            : "There is no stage '"
                + placed.afterId
                + "' to come after; "
                + Nearest.hint(placed.afterId, known)
                + ".");
  }

  /** A standard stage with what the job adds to it; its place and name stay. */
  private static Stage extended(Stage standard, Table table) {
    List<String> checks = new ArrayList<>(standard.checks());
    checks(table).stream().filter(check -> !checks.contains(check)).forEach(checks::add);
    Map<String, String> questions =
        table.findTable("questions").map(StagesTable::questions).orElse(Map.of());
    boolean holdPoint = table.find("hold_point").flatMap(Value::truth).orElse(standard.holdPoint());
    table
        .find("after")
        .ifPresent(
            value ->
                value.mistake(
                    "'" + standard.id() + "' is a standard stage already and has its place."));
    table.find(TemperatureTable.OF_STAGE);
    table.refuseOthers();
    return new Stage(standard.id(), standard.title(), checks, questions, holdPoint);
  }

  private static Optional<Placed> stage(String id, Table table) {
    Fields fields = new Fields(table);
    if (!NAME.matcher(id).matches()) {
      table.mistake("'" + id + "' is not a name for a stage; expected letters, digits, - and _.");
    }
    Optional<Value> after = table.require("after");
    String afterId = after.flatMap(Value::text).orElse("");
    List<String> checks = checks(table);
    Map<String, String> questions =
        table.findTable("questions").map(StagesTable::questions).orElse(Map.of());
    boolean holdPoint = table.find("hold_point").flatMap(Value::truth).orElse(false);
    table.find(TemperatureTable.OF_STAGE);
    fields.end();
    return fields.sound() && after.isPresent()
        ? Optional.of(
            new Placed(
                new Stage(id, id.replace('-', ' '), checks, questions, holdPoint),
                after.get(),
                afterId))
        : Optional.empty();
  }

  private static List<String> checks(Table table) {
    List<String> checks = new ArrayList<>();
    for (Value value : table.find("checks").flatMap(Value::list).orElse(List.of())) {
      String check = value.text().orElse("");
      checks.add(check);
      if (value.isText() && !CheckNames.ofStages().contains(check)) {
        value.mistake(
            "'" + check + "' is not a check; " + Nearest.hint(check, CheckNames.ofStages()) + ".");
      }
    }
    return checks;
  }

  private static Map<String, String> questions(Table table) {
    Map<String, String> questions = new LinkedHashMap<>();
    for (String name : table.keys()) {
      Optional<Value> value = table.find(name);
      if (!NAME.matcher(name).matches()) {
        value.ifPresent(
            given ->
                given.mistake(
                    "'"
                        + name
                        + "' is not a name for a question; expected letters, digits, - and"
                        + " _."));
      }
      value.flatMap(Value::text).ifPresent(text -> questions.put(name, text));
    }
    return questions;
  }
}
