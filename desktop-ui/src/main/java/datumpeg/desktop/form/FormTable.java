package datumpeg.desktop.form;

import java.util.List;
import java.util.stream.Stream;

/**
 * Rows that a user adds, names and takes away.
 *
 * @param path the table of the job file that the rows are entries of
 */
record FormTable(Kind kind, String path, List<Row> rows) {
  static final FormTable NONE = new FormTable(Kind.NONE, "", List.of());

  FormTable {
    rows = List.copyOf(rows);
  }

  /** What the rows are. */
  enum Kind {
    NONE,
    /** Corners of the slab, in order around it. */
    CORNERS,
    /** Lines on the slab. */
    LINES,
    /** Questions of a stage; each is named after its words. */
    QUESTIONS;

    /** Whether the user gives the name that stands beside a row. */
    boolean isNamed() {
      return this == CORNERS || this == LINES;
    }

    /** Whether the order of the rows means something. */
    boolean isOrdered() {
      return this == CORNERS;
    }
  }

  /**
   * One row.
   *
   * @param path the entry that goes when the row is taken away
   */
  record Row(String name, String path, List<FormField> fields) {
    Row {
      fields = List.copyOf(fields);
    }
  }

  Stream<FormField> fields() {
    return rows.stream().flatMap(row -> row.fields().stream());
  }

  /** Whether a path is the table's own, or one within it. */
  boolean covers(String at) {
    return kind != Kind.NONE && (at.equals(path) || at.startsWith(path + "."));
  }
}
