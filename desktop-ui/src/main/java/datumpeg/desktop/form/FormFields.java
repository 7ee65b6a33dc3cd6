package datumpeg.desktop.form;

import static datumpeg.desktop.form.FormField.choice;
import static datumpeg.desktop.form.FormField.may;
import static datumpeg.desktop.form.FormField.must;
import static datumpeg.desktop.form.FormGroup.always;
import static datumpeg.desktop.form.FormGroup.more;

import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.Wall;
import datumpeg.analysis.conform.GuardBand;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.form.FormField.Shape;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * What the form asks for, in its order. What it does not ask for stays in the job file as it is.
 */
final class FormFields {
  private static final List<FormGroup> FIRST =
      List.of(
          always(
              "job",
              must("job.name", Shape.TEXT),
              must("job.id", Shape.TEXT),
              must("job.site", Shape.TEXT),
              must("job.crew", Shape.TEXT),
              may("job.slab_by", Shape.TEXT),
              may("job.started", Shape.DAY)),
          always(
              "building",
              must("building.span", Shape.LENGTH),
              must("building.length", Shape.LENGTH),
              must("building.bays", Shape.LENGTHS),
              may("building.end_line_offset", Shape.LENGTH),
              must("building.eave_height", Shape.LENGTH),
              new FormField("building.roof", Shape.TEXT, true, List.of("gable", "mono")),
              must("building.pitch", Shape.ANGLE)),
          always(
              "sections",
              must("sections.column_depth", Shape.LENGTH),
              must("sections.column_width", Shape.LENGTH),
              must("sections.side_girt_depth", Shape.LENGTH),
              must("sections.end_girt_depth", Shape.LENGTH),
              must("sections.rafter_depth", Shape.LENGTH)));

  private static final List<FormGroup> MORE =
      List.of(
          more(
              "steel",
              may("sections.edge_to_girt_face", Shape.LENGTH),
              choice("sections.girts", "outside", "between"),
              may("sections.column_height", Shape.LENGTH),
              may("sections.knee_gap", Shape.LENGTH),
              may("sections.tip_distance", Shape.LENGTH),
              choice("sections.rafter_end", "square", "plumb"),
              may("sections.rafter_length", Shape.LENGTH),
              may("sections.column_straightness", Shape.LENGTH),
              may("sections.cladding_thickness", Shape.LENGTH),
              may("sections.sheet_cover", Shape.LENGTH)),
          more(
              "place",
              may("job.organisation", Shape.TEXT),
              may("job.bearing", Shape.ANGLE),
              may("job.erected_from", Shape.WHOLE)),
          more("slab", may("slab.level_points", Shape.TEXTS), may("slab.plates", Shape.LENGTHS)));

  private static final List<FormGroup> LAST =
      List.of(
          more("props", may("props.attachment", Shape.LENGTH), may("props.angle", Shape.ANGLE)),
          new FormGroup(
              "points",
              "",
              "",
              true,
              PointName.FEATURES.stream()
                  .map(feature -> may("points." + feature, Shape.LENGTH))
                  .toList()),
          more(
              "decision",
              may("decision.accept", Shape.NUMBER),
              may("decision.reject", Shape.NUMBER),
              choice("decision.guard", GuardBand.ISO_14253_1),
              may("decision.guard_factor", Shape.NUMBER)),
          new FormGroup(
              "tolerances",
              "",
              "",
              true,
              CheckNames.ALL.stream()
                  .map(check -> may("tolerances." + check, Shape.LIMIT))
                  .toList()));

  private FormFields() {}

  /** The groups of a draft: those that every job has, and one for each thing that was added. */
  static List<FormGroup> of(JobDraft draft) {
    List<FormGroup> groups = new ArrayList<>(FIRST);
    draft.keys("openings").forEach(id -> groups.add(opening(id)));
    draft.keys("meters").forEach(id -> groups.add(meter(id)));
    groups.addAll(StageFields.of(draft));
    groups.addAll(MORE);
    groups.addAll(DetailFields.of(draft));
    groups.add(StageFields.temperatures(draft));
    groups.addAll(LAST);
    return groups;
  }

  private static FormGroup opening(String id) {
    String table = "openings." + id;
    return new FormGroup(
        "opening",
        id,
        table,
        false,
        List.of(
            new FormField(
                table + ".wall",
                Shape.TEXT,
                true,
                Arrays.stream(Wall.values()).map(Wall::text).toList()),
            must(table + ".from", Shape.LENGTH),
            may(table + ".opening_width", Shape.LENGTH),
            may(table + ".curtain_width", Shape.LENGTH),
            may(table + ".track_width", Shape.LENGTH),
            must(table + ".height", Shape.LENGTH)));
  }

  private static FormGroup meter(String id) {
    String table = "meters." + id;
    return new FormGroup(
        "meter",
        id,
        table,
        false,
        List.of(
            new FormField(
                table + ".quantity",
                Shape.TEXT,
                true,
                Stream.of(MeasuredQuantity.values())
                    .filter(quantity -> quantity != MeasuredQuantity.ATTRIBUTE)
                    .map(MeasuredQuantity::text)
                    .toList()),
            may(table + ".expanded_uncertainty", Shape.TEXT),
            may(table + ".coverage", Shape.NUMBER),
            may(table + ".resolution", Shape.TEXT),
            may(table + ".repeatability", Shape.TEXT),
            may(table + ".common", Shape.TEXT),
            may(table + ".per_metre", Shape.TEXT),
            may(table + ".edge", Shape.LENGTH)));
  }
}
