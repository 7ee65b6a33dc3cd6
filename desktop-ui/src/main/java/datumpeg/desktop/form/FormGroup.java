package datumpeg.desktop.form;

import java.util.List;

/**
 * Fields that stand together.
 *
 * @param id the end of its key in the resource bundle
 * @param named the name that the user gave to it, such as that of an opening; empty for none
 * @param table the path of the table that goes when the group is taken away; empty if it cannot
 * @param optional whether a job can do without all of it
 */
record FormGroup(String id, String named, String table, boolean optional, List<FormField> fields) {
  FormGroup {
    fields = List.copyOf(fields);
  }
}
