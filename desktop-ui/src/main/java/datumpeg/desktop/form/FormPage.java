package datumpeg.desktop.form;

import java.util.List;

/**
 * All that the form shows.
 *
 * @param heading what is being filled in
 * @param filled changes when the fields are to show their texts anew
 * @param spokenPlan the plan in words, or why there is none
 * @param spokenPortal the portal frame in words, or why there is none
 * @param strange entries that no field shows and that are wrong
 * @param answer whether it can be stored, and if not why
 * @param differences to the newest revision, a sentence each
 * @param maySave whether there is something to be stored
 * @param save what storing is called
 * @param aside the name of the form that was put aside; empty for none
 */
record FormPage(
    String heading,
    List<Group> groups,
    int filled,
    BuildingShape shape,
    String spokenPlan,
    String spokenPortal,
    List<Strange> strange,
    String answer,
    List<String> differences,
    boolean maySave,
    String save,
    String aside) {
  FormPage {
    groups = List.copyOf(groups);
    strange = List.copyOf(strange);
    differences = List.copyOf(differences);
  }

  /**
   * Fields under one heading.
   *
   * @param open whether it must be seen: it is needed, or something in it is given or wrong
   * @param rows the group's fields, then the fields of its rows
   * @param wrong what is wrong with no single field of it; empty for nothing
   */
  record Group(FormGroup group, String title, boolean open, List<Row> rows, String wrong) {
    Group {
      rows = List.copyOf(rows);
    }
  }

  /**
   * One field.
   *
   * @param example what may be typed
   * @param told how what stands in it is read; empty for nothing to say
   * @param wrong what is wrong with it; empty for nothing
   * @param fixed why it cannot be typed into; empty if it can
   */
  record Row(
      FormField field,
      String label,
      String text,
      String example,
      String told,
      String wrong,
      String fixed) {}

  /**
   * An entry that no field shows, and what is wrong with it; no path for none that can be named.
   */
  record Strange(String path, String sentence) {}
}
