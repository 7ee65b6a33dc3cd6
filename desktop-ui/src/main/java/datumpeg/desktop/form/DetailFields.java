package datumpeg.desktop.form;

import static datumpeg.desktop.form.FormField.may;
import static datumpeg.desktop.form.FormGroup.more;

import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.form.FormField.Shape;
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
    return new FormTable(
        FormTable.Kind.CORNERS,
        CORNERS,
        draft.keys(CORNERS).stream().map(name -> corner(name, CORNERS + "." + name)).toList());
  }

  private static FormTable.Row corner(String name, String path) {
    return new FormTable.Row(
        name,
        path,
        List.of(cell(path + "[1]", CORNERS + ".x"), cell(path + "[2]", CORNERS + ".y")));
  }

  private static FormTable lines(JobDraft draft) {
    return new FormTable(
        FormTable.Kind.LINES,
        LINES,
        draft.keys(LINES).stream().map(name -> line(name, LINES + "." + name)).toList());
  }

  private static FormTable.Row line(String name, String path) {
    return new FormTable.Row(
        name,
        path,
        List.of(
            cell(path + "[1][1]", LINES + ".from-x"),
            cell(path + "[1][2]", LINES + ".from-y"),
            cell(path + "[2][1]", LINES + ".to-x"),
            cell(path + "[2][2]", LINES + ".to-y")));
  }

  private static FormField cell(String path, String key) {
    return new FormField(path, key, Shape.LENGTH, true, List.of());
  }
}
