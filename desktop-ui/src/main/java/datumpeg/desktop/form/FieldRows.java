package datumpeg.desktop.form;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.form.FormField.Shape;
import datumpeg.desktop.form.FormPage.Row;
import datumpeg.desktop.text.Words;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** The rows of a form: what stands in each field, how it is read, what is wrong. One thread. */
final class FieldRows {
  private static final Set<String> FIRST_OF_THEIRS =
      Set.of("openings.wall", "meters.quantity", "stages.after");

  /** Tables whose lengths are parts of a metre. */
  private static final Set<String> SMALL = Set.of("sections", "anchors", "points", "meters");

  private final Words words;
  private final FieldNames names;
  private final FormState state;
  private final Map<String, String> wrong;
  private int needed;

  /**
   * No row yet.
   *
   * @param wrong by entry what is wrong with it
   */
  FieldRows(Words words, FieldNames names, FormState state, Map<String, String> wrong) {
    this.words = words;
    this.names = names;
    this.state = state;
    this.wrong = wrong;
  }

  /** How many of the rows made are blank and must not be. */
  int needed() {
    return needed;
  }

  /**
   * Whether a mistake at a path belongs to the field: its own, one within its table, or one of a
   * whole opening or meter that it is the first field of.
   */
  static boolean covers(FormField field, String path) {
    boolean whole = FIRST_OF_THEIRS.contains(field.key()) && field.path().startsWith(path + ".");
    return whole
        || path.equals(field.path())
        || path.startsWith(field.path() + ".")
        || path.startsWith(field.path() + "[");
  }

  Row row(FormField field) {
    String text = text(field);
    boolean blank = text.isEmpty();
    boolean lacking = blank && field.required();
    needed += lacking ? 1 : 0;
    return new Row(
        field,
        names.label(field),
        text,
        example(field),
        lacking ? words.text("form.field-needed") : blank ? "" : told(field, text),
        lacking ? "" : mistakes(field),
        fixed(field));
  }

  private String text(FormField field) {
    if (!state.draft().isTable(field.path())) {
      return state.draft().text(field.path());
    }
    String prefix = field.path() + ".";
    return state.draft().leaves().entrySet().stream()
        .filter(entry -> entry.getKey().startsWith(prefix))
        .map(entry -> entry.getKey().substring(prefix.length()) + " " + entry.getValue())
        .collect(Collectors.joining(", "));
  }

  /** What is wrong with the rows of a group as a whole, or with one of them. */
  String wrongRows(FormGroup group) {
    return wrong.entrySet().stream()
        .filter(entry -> group.rows().covers(entry.getKey()))
        .filter(entry -> group.allFields().noneMatch(field -> covers(field, entry.getKey())))
        .map(entry -> names.told(entry.getValue()))
        .collect(Collectors.joining(" "));
  }

  private String mistakes(FormField field) {
    return wrong.entrySet().stream()
        .filter(entry -> covers(field, entry.getKey()))
        .map(entry -> names.told(entry.getValue()))
        .collect(Collectors.joining(" "));
  }

  private String fixed(FormField field) {
    if (state.draft().isTable(field.path())) {
      return words.text("form.fixed-table");
    }
    boolean identity = field.path().equals("job.id") || field.path().equals("job.organisation");
    return identity && state.isRevision() ? words.text("form.fixed-id") : "";
  }

  private String example(FormField field) {
    if (field.path().equals("slab.level_points")) {
      return words.text("form.example.points");
    }
    boolean feet = words.figures().lengths().display() != LengthDisplay.METRIC;
    boolean small = field.shape() == Shape.LENGTH && SMALL.contains(field.path().split("\\.")[0]);
    String key = small ? "small" : field.shape().name().toLowerCase(Locale.ROOT);
    return words.text("form.example." + key + (feet && isLength(field) ? ".feet" : ""));
  }

  private static boolean isLength(FormField field) {
    return field.shape() == Shape.LENGTH
        || field.shape() == Shape.LENGTHS
        || field.shape() == Shape.PLACES
        || field.shape() == Shape.LIMIT;
  }

  /** How it is read, in the user's units. */
  private String told(FormField field, String text) {
    return switch (field.shape()) {
      case LENGTH -> length(TypedValue.metres(text));
      case LIMIT -> limit(field.path(), text);
      case PLACES -> places(TypedValue.allMetres(text));
      case LENGTHS -> lengths(TypedValue.allMetres(text));
      case ANGLE -> angle(TypedValue.radians(text));
      case TEMPERATURE -> temperature(TypedValue.temperature(text));
      case TEMPERATURES ->
          temperature(TypedValue.temperatures(text, " " + words.text("form.to") + " "));
      case TEXT, TEXTS, SENTENCE, DAY, WHOLE, NUMBER, TRUTH, WARMER, SOME -> "";
    };
  }

  /** What holds between the sizes of a limit in steps is said: documents differ on it. */
  private String limit(String path, String text) {
    Set<String> keys = Set.copyOf(state.draft().keys(path));
    if (keys.contains("lower") || keys.contains("upper")) {
      return between(
          TypedValue.metres(state.draft().text(path + ".lower")),
          TypedValue.metres(state.draft().text(path + ".upper")));
    }
    if (!state.draft().keys(path).contains("steps")) {
      return length(TypedValue.metres(text));
    }
    boolean linear = state.draft().text(path + ".interpolate").equals("linear");
    return words.text(linear ? "form.limit.linear" : "form.limit.steps");
  }

  private String between(OptionalDouble lower, OptionalDouble upper) {
    if (lower.isEmpty() || upper.isEmpty()) {
      return lower.isEmpty() && upper.isEmpty()
          ? ""
          : lower.isEmpty()
              ? words.text("form.limit.up-to", words.figures().deviation(upper.getAsDouble()))
              : words.text("form.limit.from", words.figures().deviation(lower.getAsDouble()));
    }
    return words.text(
        "form.limit.between",
        words.figures().deviation(lower.getAsDouble()),
        words.figures().deviation(upper.getAsDouble()));
  }

  private String length(OptionalDouble metres) {
    return metres.isPresent() ? "= " + words.figures().size(metres.getAsDouble()) : "";
  }

  private String places(double[] metres) {
    return metres.length == 0
        ? ""
        : "= "
            + Arrays.stream(metres)
                .mapToObj(words.figures()::size)
                .collect(Collectors.joining("; "));
  }

  private String lengths(double[] metres) {
    return metres.length == 0
        ? ""
        : words.text("form.sum", metres.length, words.figures().size(Arrays.stream(metres).sum()));
  }

  private static String temperature(String read) {
    return read.isEmpty() ? "" : "= " + read;
  }

  private static String angle(OptionalDouble radians) {
    return radians.isEmpty()
        ? ""
        : "= " + LengthDisplay.decimal(StrictMath.toDegrees(radians.getAsDouble()), 2) + "°";
  }
}
