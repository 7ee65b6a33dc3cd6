package datumpeg.desktop.form;

import java.util.List;
import java.util.stream.Stream;

/**
 * Fields that stand together.
 *
 * @param id the end of its key in the resource bundle
 * @param named the name that the user gave to it, such as that of an opening; empty for none
 * @param table the path of the table that goes when the group is taken away; empty if it cannot
 * @param optional whether a job can do without all of it
 * @param rows what stands below the fields, row by row
 */
record FormGroup(
    String id,
    String named,
    String table,
    boolean optional,
    List<FormField> fields,
    FormTable rows) {
  FormGroup {
    fields = List.copyOf(fields);
  }

  FormGroup(String id, String named, String table, boolean optional, List<FormField> fields) {
    this(id, named, table, optional, fields, FormTable.NONE);
  }

  /** Fields that every job has. */
  static FormGroup always(String id, FormField... fields) {
    return new FormGroup(id, "", "", false, List.of(fields));
  }

  /** Fields that a job can do without. */
  static FormGroup more(String id, FormField... fields) {
    return new FormGroup(id, "", "", true, List.of(fields));
  }

  FormGroup with(FormTable newRows) {
    return new FormGroup(id, named, table, optional, fields, newRows);
  }

  /** Whether all that it asks for are limits, which take long lines. */
  boolean isOfLimits() {
    return !fields.isEmpty()
        && fields.stream().allMatch(field -> field.shape() == FormField.Shape.LIMIT);
  }

  /** Its fields, then those of its rows. */
  Stream<FormField> allFields() {
    return Stream.concat(fields.stream(), rows.fields());
  }
}
