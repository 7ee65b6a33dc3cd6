package datumpeg.desktop.form;

import datumpeg.bridge.jobfile.JobDraft;
import java.util.List;

/**
 * One entry of a job file as it is asked for.
 *
 * @param path the keys of the entry, joined by points
 * @param required whether a job cannot do without it
 * @param choices the words that may stand in it; none where anything may
 */
record FormField(String path, Shape shape, boolean required, List<String> choices) {
  FormField {
    choices = List.copyOf(choices);
  }

  /** What is typed into it. */
  enum Shape {
    TEXT,
    TEXTS,
    LENGTH,
    LENGTHS,
    ANGLE,
    DAY,
    WHOLE,
    /** A length, or an id of the limits table. */
    LIMIT;

    /** How the job file writes it. */
    JobDraft.Kind kind() {
      return switch (this) {
        case TEXT, LENGTH, ANGLE, LIMIT -> JobDraft.Kind.TEXT;
        case TEXTS, LENGTHS -> JobDraft.Kind.LIST;
        case DAY -> JobDraft.Kind.DAY;
        case WHOLE -> JobDraft.Kind.WHOLE;
      };
    }
  }

  /** Its path without the name that the user gave, such as {@code openings.height}. */
  String key() {
    String[] keys = path.split("\\.", -1);
    return keys.length == 3 ? keys[0] + "." + keys[2] : path;
  }

  /** The end of its path. */
  String name() {
    return path.substring(path.lastIndexOf('.') + 1);
  }
}
