package datumpeg.desktop.form;

import static datumpeg.desktop.form.FormField.may;

import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.form.FormField.Shape;
import java.util.ArrayList;
import java.util.List;

/**
 * The stages that a job has of its own, what it adds to the usual ones, and how warm the steel was.
 */
final class StageFields {
  private static final String STEEL = "steel_temperature";
  private static final List<String> YES_NO = List.of("true", "false");

  private StageFields() {}

  /** One group for each stage that the draft says something of, its temperature aside. */
  static List<FormGroup> of(JobDraft draft) {
    return draft.keys("stages").stream()
        .filter(id -> !List.of(STEEL).equals(draft.keys("stages." + id)))
        .map(id -> stage(draft, id))
        .toList();
  }

  private static FormGroup stage(JobDraft draft, String id) {
    String table = "stages." + id;
    boolean own = Stage.standard(id).isEmpty();
    List<FormField> fields = new ArrayList<>();
    if (own) {
      fields.add(new FormField(table + ".after", Shape.TEXT, true, others(draft, id)));
    }
    fields.add(new FormField(table + ".hold_point", Shape.TRUTH, false, YES_NO));
    fields.add(new FormField(table + ".checks", Shape.SOME, false, CheckNames.ofStages()));
    return new FormGroup(own ? "stage" : "usual-stage", id, table, false, fields)
        .with(questions(draft, table + ".questions"));
  }

  /** The stages that one can come after. */
  private static List<String> others(JobDraft draft, String id) {
    List<String> others = all(draft);
    others.remove(id);
    return others;
  }

  private static List<String> all(JobDraft draft) {
    List<String> all = new ArrayList<>(Stage.STANDARD.stream().map(Stage::id).toList());
    draft.keys("stages").stream().filter(id -> !all.contains(id)).forEach(all::add);
    return all;
  }

  private static FormTable questions(JobDraft draft, String path) {
    return new FormTable(
        FormTable.Kind.QUESTIONS,
        path,
        draft.keys(path).stream()
            .map(name -> new FormTable.Row(name, path + "." + name, question(path, name)))
            .toList());
  }

  private static List<FormField> question(String path, String name) {
    return List.of(
        new FormField(path + "." + name, "stages.questions", Shape.SENTENCE, true, List.of()));
  }

  static FormGroup temperatures(JobDraft draft) {
    List<FormField> fields = new ArrayList<>();
    all(draft).forEach(id -> fields.add(may("stages." + id + "." + STEEL, Shape.TEMPERATURE)));
    fields.add(may("temperature.steel_range", Shape.TEMPERATURES));
    fields.add(may("temperature.read_within", Shape.WARMER));
    return new FormGroup("temperature", "", "", true, fields);
  }
}
