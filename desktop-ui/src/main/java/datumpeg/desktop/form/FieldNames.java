package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.text.Words;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the entries of a job file are called on screen. Immutable. */
final class FieldNames {
  private static final Pattern NAMED =
      Pattern.compile("'([a-z_]+(?:\\.[A-Za-z0-9_-]+)+)((?:\\[[0-9]+])*)((?:\\.[a-z_]+)?)'");

  /** Between quotation marks; behind a digit the mark is an inch. */
  private static final Pattern QUOTED =
      Pattern.compile("(?<![^\\s(])\"(?=\\S)([^\"]*[^\\d\\s\"])\"(?![^\\s,.;:)])");

  private static final Pattern KEY = Pattern.compile("\\b[a-z]+(?:_[a-z]+)+\\b");
  private static final String TOLERANCES = "tolerances.";
  private static final String STAGES = "stages.";

  private final Words words;
  private final Map<String, String> known = new HashMap<>();

  /** The names of all entries of some drafts. */
  FieldNames(Words words, JobDraft... drafts) {
    this.words = words;
    for (JobDraft draft : drafts) {
      for (FormGroup group : FormFields.of(draft)) {
        group.fields().forEach(field -> known.put(field.path(), whole(group, field)));
        group.rows().rows().forEach(row -> know(group, row));
      }
    }
  }

  private void know(FormGroup group, FormTable.Row row) {
    String name =
        group.rows().kind().isNamed()
            ? words.text("form.name.of", title(group), row.name())
            : title(group);
    known.put(row.path(), name);
    row.fields()
        .forEach(field -> known.put(field.path(), words.text("form.name.of", name, label(field))));
  }

  /** Beside the field itself. */
  String label(FormField field) {
    if (field.path().startsWith(TOLERANCES)) {
      return words.check(field.name());
    }
    boolean ofStage = field.path().startsWith(STAGES);
    String stage = ofStage ? words.stage(field.path().split("\\.", -1)[1]) : "";
    return words.text("form.field." + field.key(), stage);
  }

  /** The heading of a group. */
  String title(FormGroup group) {
    boolean usual = group.id().equals("usual-stage");
    return words.text(
        "form.group." + group.id(), usual ? words.stage(group.named()) : group.named());
  }

  /** Where the field stands alone in a sentence; an entry that no field shows keeps its keys. */
  String of(String path) {
    String name = known.get(path);
    if (name != null) {
      return name;
    }
    int end = path.lastIndexOf('.');
    String table = end < 0 ? null : known.get(path.substring(0, end));
    return table == null
        ? path.replace('.', ' ').replace('_', ' ')
        : table + " (" + path.substring(end + 1).replace('_', ' ') + ")";
  }

  /** An item by the name it has itself, else by that of its list and its number. */
  private String of(String path, String items) {
    String whole = known.get(path + items);
    if (whole != null || items.isEmpty()) {
      return whole == null ? of(path) : whole;
    }
    return of(path) + items.replaceAll("\\[([0-9]+)]", " $1");
  }

  /**
   * A sentence on a job file with the names on screen in place of its keys, and without its signs.
   */
  String told(String sentence) {
    Matcher found = NAMED.matcher(sentence);
    StringBuilder told = new StringBuilder();
    while (found.find()) {
      found.appendReplacement(
          told,
          Matcher.quoteReplacement(
              "“"
                  + of(String.valueOf(found.group(1)), String.valueOf(found.group(2)))
                  + String.valueOf(found.group(3)).replace(".", ", ").replace('_', ' ')
                  + "”"));
    }
    found.appendTail(told);
    String spaced = KEY.matcher(told).replaceAll(key -> key.group().replace('_', ' '));
    return words.told(QUOTED.matcher(spaced.replace(" without quotes", "")).replaceAll("“$1”"));
  }

  private String whole(FormGroup group, FormField field) {
    if (field.path().startsWith(TOLERANCES)) {
      return words.text("form.name.tolerance", label(field));
    }
    return group.named().isEmpty()
        ? label(field)
        : words.text("form.name.of", title(group), label(field));
  }
}
