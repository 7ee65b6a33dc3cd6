package datumpeg.desktop.form;

import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.form.FormPage.Row;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Every field is an entry of a job file, there and back. */
class FormFieldsTest {
  private static final Map<String, String> SPECIAL =
      Map.ofEntries(
          Map.entry("building.end_line_offset", "0 mm"),
          Map.entry("meters.laser.common", ""),
          Map.entry("sections.tip_distance", "5.6 m"),
          Map.entry("openings.D1.from", "1 m"),
          Map.entry("openings.D1.curtain_width", ""),
          Map.entry("openings.D1.track_width", ""),
          Map.entry("meters.laser.expanded_uncertainty", "4 mm"),
          Map.entry("meters.laser.repeatability", "1 mm"),
          Map.entry("meters.laser.per_metre", "0.05 mm/m"),
          Map.entry("slab.level_points", "slab.A1; seat.A2; slab.@(1.0;2.0)"),
          Map.entry("mullions.end_1", "2000; 4 m"),
          Map.entry("mullions.end_n", "3 m"),
          Map.entry("flatness.step", "300"),
          Map.entry("flatness.lines.L1[1][1]", "1 m"),
          Map.entry("sections.rafter_length", "2.9 m"),
          Map.entry("decision.reject", "0.1"));

  private final FormAtHand form = new FormAtHand();

  /** Every field has its texts, and the reader of job files knows every entry it writes. */
  @Test
  void everyFieldIsAnEntryOfAJobFile() {
    form.fillIn();
    form.model.edits().addOpening();
    form.model.edits().addMeter("laser");
    form.model.edits().addStage("curing");
    form.model.edits().addStage("lift");
    addRows();
    for (FormPage.Group group : form.model.page().get().groups()) {
      for (Row row : group.rows()) {
        if (row.text().isEmpty() && row.field().choices().isEmpty()) {
          form.type(
              row.field().path(), SPECIAL.getOrDefault(row.field().path(), usual(row.field())));
        } else if (row.text().isEmpty()) {
          form.type(row.field().path(), row.field().choices().get(0));
        }
      }
    }
    assertTrue(form.maySave(), form::mistakes);
  }

  private void addRows() {
    for (FormPage.Group group : form.model.page().get().groups()) {
      switch (group.group().rows().kind()) {
        case CORNERS -> form.model.edits().beginWithRectangle(group.group().rows());
        case LINES -> form.model.edits().addRow(group.group().rows(), "L1");
        case QUESTIONS -> form.model.edits().addRow(group.group().rows(), "Is it dry?");
        case NONE -> {}
      }
    }
  }

  private static String usual(FormField field) {
    return switch (field.shape()) {
      case TEXT, TEXTS -> "1 mm";
      case SENTENCE -> "Is it level?";
      case NUMBER -> "0.9";
      case TRUTH -> "true";
      case TEMPERATURE -> "12";
      case TEMPERATURES -> "5; 35";
      case WARMER -> "3";
      case SOME -> "slab-level";
      case LENGTH, LIMIT -> "2 m";
      case LENGTHS, PLACES -> "1 mm; 2 mm";
      case ANGLE -> "10 deg";
      case DAY -> "2026-03-02";
      case WHOLE -> "1";
    };
  }
}
