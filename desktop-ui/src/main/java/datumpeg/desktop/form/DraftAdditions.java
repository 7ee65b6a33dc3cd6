package datumpeg.desktop.form;

import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.bridge.jobfile.JobDraft.Kind;
import java.util.Locale;

/** What the form's buttons add to a draft. Pure functions; any thread. */
final class DraftAdditions {
  private static final int LONGEST_NAME = 40;

  /**
   * A draft with something more in it.
   *
   * @param refused the key of the sentence why nothing was added; empty if it was
   * @param name what the new thing is called in the job file
   */
  record Added(JobDraft draft, String refused, String name) {
    static Added to(JobDraft draft, String name) {
      return new Added(draft, "", name);
    }
  }

  private DraftAdditions() {}

  /** An opening, named after those there are. */
  static JobDraft opening(JobDraft draft) {
    int number = 1;
    while (draft.keys("openings").contains("D" + number)) {
      number++;
    }
    return draft.with("openings.D" + number + ".wall", Kind.TEXT, "end 1");
  }

  static Added meter(JobDraft draft, String name) {
    String id = id(name, "[^A-Za-z0-9_-]+", "-");
    return id.isEmpty() || draft.keys("meters").contains(id)
        ? refused(draft, "form.meter-nameless", "form.meter-there", id)
        : Added.to(draft.with("meters." + id + ".quantity", Kind.TEXT, "distance"), id);
  }

  /** A stage of the job's own; for the name of a usual one, what the job adds to that. */
  static Added stage(JobDraft draft, String name) {
    String id = id(name, "[^A-Za-z0-9_-]+", "-");
    String usual = id.toLowerCase(Locale.ROOT);
    if (Stage.standard(usual).isPresent()) {
      return addition(draft, usual);
    }
    return id.isEmpty() || draft.keys("stages").contains(id)
        ? refused(draft, "form.stage-nameless", "form.stage-there", id)
        : Added.to(draft.with("stages." + id + ".after", Kind.TEXT, "arrival"), id);
  }

  private static Added addition(JobDraft draft, String usual) {
    String holdPoint = "stages." + usual + ".hold_point";
    return StageFields.of(draft).stream().anyMatch(group -> group.named().equals(usual))
        ? refused(draft, "form.stage-nameless", "form.stage-there", usual)
        : Added.to(draft.with(holdPoint, Kind.TRUTH, "true"), usual);
  }

  /** A row with blank fields; of a question the name is the question. */
  static Added row(JobDraft draft, FormTable table, String name) {
    return switch (table.kind()) {
      case CORNERS -> corner(draft, table.path(), name);
      case LINES -> line(draft, table.path(), name);
      case QUESTIONS -> question(draft, table.path(), name.strip());
      case NONE -> throw new IllegalArgumentException("A group without rows gets none.");
    };
  }

  private static Added corner(JobDraft draft, String table, String name) {
    String id = id(name, "[^A-Za-z0-9_]+", "");
    return id.isEmpty() || draft.keys(table).contains(id)
        ? refused(draft, "form.corners-nameless", "form.corners-there", id)
        : Added.to(point(draft, table + "." + id, "", ""), id);
  }

  private static Added line(JobDraft draft, String table, String name) {
    String id = id(name, "[^A-Za-z0-9_]+", "");
    String path = table + "." + id;
    return id.isEmpty() || draft.keys(table).contains(id)
        ? refused(draft, "form.lines-nameless", "form.lines-there", id)
        : Added.to(point(point(draft, path + "[1]", "", ""), path + "[2]", "", ""), id);
  }

  private static JobDraft point(JobDraft draft, String path, String along, String across) {
    return draft.with(path + "[1]", Kind.TEXT, along).with(path + "[2]", Kind.TEXT, across);
  }

  private static Added question(JobDraft draft, String table, String question) {
    if (question.isEmpty()) {
      return new Added(draft, "form.questions-nameless", "");
    }
    String words = id(question.toLowerCase(Locale.ROOT), "[^a-z0-9]+", "-");
    String first = words.isEmpty() ? "question" : words;
    String id = first;
    for (int number = 2; draft.keys(table).contains(id); number++) {
      id = first + "-" + number;
    }
    return Added.to(draft.with(table + "." + id, Kind.TEXT, question), id);
  }

  /** The corners of the rectangle of span and length, as far as these are given. */
  static JobDraft rectangle(JobDraft draft, String table) {
    String length = draft.text("building.length");
    String span = draft.text("building.span");
    int last = Math.max(2, TypedValue.allMetres(draft.text("building.bays")).length + 1);
    JobDraft made = draft.without(table);
    made = point(made, table + ".A1", "0 m", "0 m");
    made = point(made, table + ".A" + last, length, "0 m");
    made = point(made, table + ".B" + last, length, span);
    return point(made, table + ".B1", "0 m", span);
  }

  private static String id(String name, String unfit, String instead) {
    String id = name.strip().replaceAll(unfit, instead).replaceAll("^[-_]+|-+$", "");
    return id.length() <= LONGEST_NAME ? id : id.substring(0, LONGEST_NAME).replaceAll("-+$", "");
  }

  private static Added refused(JobDraft draft, String nameless, String there, String id) {
    return new Added(draft, id.isEmpty() ? nameless : there, id);
  }
}
