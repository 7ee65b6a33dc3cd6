package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobDraft;
import java.util.List;

/**
 * One entry of a job file as it is asked for.
 *
 * @param path the entry, as a draft knows it
 * @param key the end of its key in the resource bundle
 * @param required whether a job cannot do without it
 * @param choices the words that may stand in it; none where anything may
 */
record FormField(String path, String key, Shape shape, boolean required, List<String> choices) {
  FormField {
    choices = List.copyOf(choices);
  }

  /** A field whose key is its path without the name that the user gave: {@code openings.height}. */
  FormField(String path, Shape shape, boolean required, List<String> choices) {
    this(path, withoutName(path), shape, required, choices);
  }

  static FormField must(String path, Shape shape) {
    return new FormField(path, shape, true, List.of());
  }

  static FormField may(String path, Shape shape) {
    return new FormField(path, shape, false, List.of());
  }

  /** A choice of texts. */
  static FormField choice(String path, String... words) {
    return new FormField(path, Shape.TEXT, false, List.of(words));
  }

  /** What is typed into it. */
  enum Shape {
    TEXT,
    TEXTS,
    /** A text that stays, blank, when it is wiped out. */
    SENTENCE,
    LENGTH,
    LENGTHS,
    /** Lengths from one place, whose sum means nothing. */
    PLACES,
    ANGLE,
    DAY,
    WHOLE,
    NUMBER,
    /** Yes or no. */
    TRUTH,
    TEMPERATURE,
    TEMPERATURES,
    /** A difference of temperatures. */
    WARMER,
    /** Some of its choices. */
    SOME,
    /** A length, an id of the limits table, or the entries of a limit in one line. */
    LIMIT;

    /** How the job file writes it. */
    JobDraft.Kind kind() {
      return switch (this) {
        case TEXT, SENTENCE, LENGTH, ANGLE, TEMPERATURE, WARMER -> JobDraft.Kind.TEXT;
        case LIMIT -> JobDraft.Kind.LIMIT;
        case TEXTS, LENGTHS, PLACES, TEMPERATURES, SOME -> JobDraft.Kind.LIST;
        case DAY -> JobDraft.Kind.DAY;
        case WHOLE -> JobDraft.Kind.WHOLE;
        case NUMBER -> JobDraft.Kind.NUMBER;
        case TRUTH -> JobDraft.Kind.TRUTH;
      };
    }
  }

  private static String withoutName(String path) {
    String[] keys = path.split("\\.", -1);
    return keys.length == 3 ? keys[0] + "." + keys[2] : path;
  }

  /** The end of its path. */
  String name() {
    return path.substring(path.lastIndexOf('.') + 1);
  }
}
