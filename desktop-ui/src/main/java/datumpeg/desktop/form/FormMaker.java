package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.form.FormPage.Group;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.form.FormPage.Strange;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a page of a form. A pure function; any thread. */
final class FormMaker {
  private static final String LOCAL = "local";

  private final Words words;

  FormMaker(Words words) {
    this.words = words;
  }

  FormPage page(FormAsked asked) {
    FormState state = asked.state();
    JobDraft draft = state.draft();
    JobDraft base = state.isRevision() ? JobDraft.of(state.base()) : draft;
    FieldNames names = new FieldNames(words, draft, base);
    JobDraft.Checked checked = draft.check();
    Map<String, String> wrong = new HashMap<>(checked.atEntries());
    taken(asked).ifPresent(sentence -> wrong.put("job.id", sentence));
    FieldRows rows = new FieldRows(words, names, state, wrong);
    List<Group> groups =
        FormFields.of(draft).stream().map(group -> group(group, names, rows)).toList();
    List<Strange> strange = rows.needed() > 0 ? List.of() : strange(checked, groups, names);
    List<String> differences =
        state.isRevision() ? new DraftDifferences(words, names).sentences(base, draft) : List.of();
    boolean sound = checked.job().isPresent() && wrong.isEmpty() && rows.needed() == 0;
    BuildingShape shape = BuildingShape.of(draft);
    return new FormPage(
        heading(state),
        groups,
        asked.filled(),
        shape,
        new ShapeWords(words, shape).plan(),
        new ShapeWords(words, shape).portal(),
        strange,
        answer(state, sound, rows),
        differences,
        sound && !state.text().equals(state.base()),
        words.text(state.isRevision() ? "form.store-revision" : "form.store"),
        asked.aside().isWorthKeeping() ? name(asked.aside()) : "");
  }

  /** A new job must not become a revision of another one unnoticed. */
  private Optional<String> taken(FormAsked asked) {
    if (asked.state().isRevision()) {
      return Optional.empty();
    }
    String id = asked.state().draft().text("job.id");
    String organisation = asked.state().draft().text("job.organisation");
    boolean local = organisation.isEmpty() || organisation.equals(LOCAL);
    String key = local ? id : organisation + "/" + id;
    return asked.jobs().contains(key)
        ? Optional.of(words.text("form.taken", key))
        : Optional.empty();
  }

  private Group group(FormGroup group, FieldNames names, FieldRows rows) {
    List<Row> made = group.allFields().map(rows::row).toList();
    String wrong = rows.wrongRows(group);
    boolean said =
        !wrong.isEmpty()
            || !group.rows().rows().isEmpty()
            || made.stream().anyMatch(row -> !row.text().isEmpty() || !row.wrong().isEmpty());
    return new Group(group, names.title(group), !group.optional() || said, made, wrong);
  }

  private static List<Strange> strange(
      JobDraft.Checked checked, List<Group> groups, FieldNames names) {
    List<Strange> strange = new ArrayList<>();
    checked.elsewhere().forEach(text -> strange.add(new Strange("", names.told(text))));
    checked
        .atEntries()
        .forEach(
            (path, sentence) -> {
              if (groups.stream().noneMatch(group -> shows(group, path))) {
                strange.add(new Strange(path, names.told(sentence)));
              }
            });
    return strange;
  }

  private static boolean shows(Group group, String path) {
    return group.group().rows().covers(path)
        || group.rows().stream().anyMatch(row -> FieldRows.covers(row.field(), path));
  }

  private String heading(FormState state) {
    return state.isRevision()
        ? words.text("form.heading.revision", name(state))
        : words.text("form.heading.new");
  }

  private String name(FormState state) {
    String name = state.draft().text("job.name");
    String id = state.draft().text("job.id");
    String known = name.isEmpty() ? id : name;
    return known.isEmpty() ? words.text("form.nameless") : known;
  }

  private String answer(FormState state, boolean sound, FieldRows rows) {
    if (rows.needed() > 0) {
      return words.count("form.needed", rows.needed());
    }
    if (!sound) {
      return words.text("form.wrong");
    }
    if (state.isRevision() && state.text().equals(state.base())) {
      return words.text("form.same");
    }
    return words.text(state.isRevision() ? "form.ready-revision" : "form.ready");
  }
}
