package datumpeg.desktop.form;

import static datumpeg.desktop.form.FormField.may;
import static datumpeg.desktop.form.FormGroup.more;

import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.form.FormField.Shape;
import java.util.ArrayList;
import java.util.List;

/** The slab's own outline, and the parts of the building that not every job has. */
final class DetailFields {
  private static final String CORNERS = "slab.corners";
  private static final String LINES = "flatness.lines";

  private DetailFields() {}

  static List<FormGroup> of(JobDraft draft) {
    return List.of(
        more("outline").with(corners(draft)),
        more(
            "mullions",
            may("mullions.end_1", Shape.PLACES),
            may("mullions.end_n", Shape.PLACES),
            may("mullions.height", Shape.LENGTH)),
        more(
            "anchors",
            may("anchors.edge_distance", Shape.LENGTH),
            may("anchors.across", Shape.LENGTH),
            may("anchors.along", Shape.LENGTH)),
        gutter("A"),
        gutter("B"),
        more(
                "flatness",
                may("flatness.straightedge", Shape.LENGTH),
                may("flatness.spacing", Shape.LENGTH),
                may("flatness.step", Shape.LENGTH),
                may("flatness.least_ff", Shape.NUMBER),
                may("flatness.least_fl", Shape.NUMBER))
            .with(lines(draft)));
  }

  private static FormGroup gutter(String side) {
    String table = "gutters." + side;
    return new FormGroup(
        "gutter",
        side,
        "",
        true,
        List.of(
            may(table + ".outlet", Shape.LENGTH),
            may(table + ".fall", Shape.ANGLE),
            may(table + ".bracket_spacing", Shape.LENGTH)));
  }

  private static FormTable corners(JobDraft draft) {
    return rows(FormTable.Kind.CORNERS, CORNERS, draft, List.of("[1]", "[2]"), List.of("x", "y"));
  }

  private static FormTable lines(JobDraft draft) {
    return rows(
        FormTable.Kind.LINES,
        LINES,
        draft,
        List.of("[1][1]", "[1][2]", "[2][1]", "[2][2]"),
        List.of("from-x", "from-y", "to-x", "to-y"));
  }

  /** A row for each key of a table, with a cell for each item of what stands there. */
  private static FormTable rows(
      FormTable.Kind kind, String table, JobDraft draft, List<String> items, List<String> called) {
    List<FormTable.Row> rows = new ArrayList<>();
    for (String name : draft.keys(table)) {
      String path = table + "." + name;
      List<FormField> cells = new ArrayList<>();
      for (int i = 0; i < items.size(); i++) {
        cells.add(cell(path + items.get(i), table + "." + called.get(i)));
      }
      rows.add(new FormTable.Row(name, path, cells));
    }
    return new FormTable(kind, table, rows);
  }

  private static FormField cell(String path, String key) {
    return new FormField(path, key, Shape.LENGTH, true, List.of());
  }
}
