package datumpeg.desktop.form;

import static java.util.Objects.requireNonNull;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.conform.LimitRule;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.desktop.form.FormPage.Group;
import datumpeg.desktop.form.FormPage.Row;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What not every job has: typed, stored, read by the reader of job files, and shown again from the
 * job file alone. The building is 6 m by 9 m, its frames 1 to 3.
 */
class FormDetailsTest {
  private final FormAtHand form = new FormAtHand();

  @BeforeEach
  void fillIn() {
    form.fillIn();
  }

  private FormTable table(FormTable.Kind kind) {
    return form.model.page().get().groups().stream()
        .map(group -> group.group().rows())
        .filter(rows -> rows.kind() == kind)
        .findFirst()
        .orElseThrow();
  }

  private Group group(String id) {
    return form.model.page().get().groups().stream()
        .filter(group -> group.group().id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  /** Stores what is typed, and sees whether a form of the file alone has the same fields. */
  private Job stored() {
    assertTrue(form.maySave(), form::mistakes);
    form.model.store();
    String file = form.shelf.taken.get(form.shelf.taken.size() - 1);
    Map<String, String> typed = texts(form.model);
    form.shelf.file = file;
    FormViewModel again = form.another();
    again.takeFile(Path.of("job.toml"));
    assertEquals(typed, texts(again));
    assertEquals(file, JobDraft.of(file).toml());
    return JobFile.read(file, "job.toml");
  }

  private static Map<String, String> texts(FormViewModel model) {
    Map<String, String> texts = new TreeMap<>();
    for (Group group : model.page().get().groups()) {
      for (Row row : group.rows()) {
        texts.put(row.field().path(), row.text());
      }
    }
    return texts;
  }

  private void corner(String name, String along, String across) {
    form.model.edits().addRow(table(FormTable.Kind.CORNERS), name);
    form.type("slab.corners." + name + "[1]", along);
    form.type("slab.corners." + name + "[2]", across);
  }

  @Test
  void outlineOfTheSlabIsGivenCornerByCorner() {
    corner("A1", "0", "0");
    corner("A3", "9 m", "0");
    corner("C3", "9 m", "4500");
    corner("C2", "6 m", "4500");
    corner("B2", "6 m", "6 m");
    corner("B1", "-500", "6 m");
    Job job = stored();
    assertEquals(List.of("A1", "A3", "C3", "C2", "B2", "B1"), job.setOut().slab().cornerNames());
    assertEquals(new PlanPoint(-0.5, 6), job.setOut().slab().corners().get("B1"));
    assertTrue(
        form.model.page().get().spokenPlan().contains("C2 6000 mm, 4500 mm; B2"),
        form.model.page().get().spokenPlan());
  }

  @Test
  void cornerWithoutItsPlaceIsNeededAndItsRowCanGoAgain() {
    form.model.edits().beginWithRectangle(table(FormTable.Kind.CORNERS));
    assertEquals(List.of("A1", "A3", "B3", "B1"), names(FormTable.Kind.CORNERS));
    assertTrue(form.maySave(), form::mistakes);
    form.model.edits().addRow(table(FormTable.Kind.CORNERS), "C1");
    assertEquals("2 fields are still needed.", form.answer());
    assertFalse(form.maySave());
    form.model.edits().addRow(table(FormTable.Kind.CORNERS), "C1");
    assertEquals("There is a corner C1 already.", form.model.said().get());
    form.model.edits().remove("slab.corners.C1");
    assertTrue(form.maySave(), form::mistakes);
  }

  @Test
  void orderOfTheCornersIsToldAndCanBeMended() {
    form.model.edits().beginWithRectangle(table(FormTable.Kind.CORNERS));
    FormTable.Row last = table(FormTable.Kind.CORNERS).rows().get(3);
    form.model.edits().raise(table(FormTable.Kind.CORNERS), last);
    assertEquals(List.of("A1", "A3", "B1", "B3"), names(FormTable.Kind.CORNERS));
    assertTrue(group("outline").wrong().contains("cross"), group("outline")::toString);
    assertEquals(List.of(), form.model.page().get().strange());
    form.model
        .edits()
        .raise(table(FormTable.Kind.CORNERS), table(FormTable.Kind.CORNERS).rows().get(3));
    assertTrue(form.maySave(), form::mistakes);
  }

  private List<String> names(FormTable.Kind kind) {
    return table(kind).rows().stream().map(FormTable.Row::name).toList();
  }

  @Test
  void mistakeOfACoordinateStandsAtItsField() {
    form.model.edits().beginWithRectangle(table(FormTable.Kind.CORNERS));
    form.type("slab.corners.B3[2]", "far");
    Row row = form.row("slab.corners.B3[2]");
    assertTrue(
        row.wrong().startsWith("“Outline of the slab, B3, y, across”: 'far' is not a value"),
        row.wrong());
    assertEquals("", form.row("slab.corners.B3[1]").wrong());
  }

  @Test
  void endPostsAnchorsAndGuttersAreStored() {
    form.type("mullions.end_1", "2000; 4 m");
    form.type("mullions.end_n", "3 m");
    form.type("mullions.height", "2.5 m");
    form.type("anchors.edge_distance", "60");
    form.type("anchors.across", "80");
    form.type("gutters.B.outlet", "9 m");
    form.type("gutters.B.fall", "1:500");
    assertEquals("= 2000.0 mm; 4000.0 mm", form.row("mullions.end_1").told());
    var details = stored().setOut().details();
    assertEquals(3, details.mullions().size());
    assertEquals(4, details.mullions().get(1).fromSideAMetres());
    assertEquals(0.06, details.anchors().orElseThrow().edgeDistanceMetres());
    assertEquals(0.002, requireNonNull(details.gutters().get('B')).fall(), 1e-12);
    String spoken = form.model.page().get().spokenPlan();
    assertTrue(spoken.contains("End post M2 at end 1, 4000 mm from side A."), spoken);
    assertTrue(spoken.contains("Gutter of side B, outlet 9000 mm from end 1."), spoken);
    assertTrue(spoken.contains("Anchors at least 60 mm from the edge."), spoken);
  }

  @Test
  void gutterWithoutItsFallIsSaidAtTheFall() {
    form.type("gutters.A.outlet", "1 m");
    assertFalse(form.maySave());
    assertFalse(form.row("gutters.A.fall").wrong().isEmpty(), form::mistakes);
  }

  @Test
  void flatnessLinesAreStored() {
    form.type("flatness.straightedge", "2 m");
    form.type("flatness.least_ff", "25");
    form.type("flatness.least_fl", "17,5");
    form.model.edits().addRow(table(FormTable.Kind.LINES), "L1");
    form.type("flatness.lines.L1[1][1]", "1 m");
    form.type("flatness.lines.L1[1][2]", "1 m");
    form.type("flatness.lines.L1[2][1]", "8 m");
    form.type("flatness.lines.L1[2][2]", "1500");
    var plan = stored().setOut().details().flatness().orElseThrow();
    assertEquals(2, plan.straightedgeMetres());
    assertEquals(25, plan.leastFlatness().orElseThrow());
    assertEquals(17.5, plan.leastLevelness().orElseThrow());
    assertEquals(1.5, requireNonNull(plan.lines().get("L1")).toY());
    String spoken = form.model.page().get().spokenPlan();
    assertTrue(
        spoken.contains("Flatness line L1 from 1000 mm, 1000 mm to 8000 mm, 1500 mm."), spoken);
  }

  @Test
  void stagesOfItsOwnAndAdditionsToUsualOnesAreStored() {
    form.model.edits().addStage("curing");
    form.type("stages.curing.hold_point", "true");
    form.type("stages.curing.checks", "slab-level, seat-level");
    form.model.edits().addRow(table(FormTable.Kind.QUESTIONS), "Is the edge sound?");
    form.model.edits().addStage("Lift");
    form.type("stages.lift.hold_point", "false");
    form.model.edits().addStage("lift");
    assertEquals("There is a stage lift already.", form.model.said().get());
    List<Stage> stages = stored().stages();
    Stage curing = stages.get(1);
    assertEquals("curing", curing.id());
    assertTrue(curing.holdPoint());
    assertEquals(List.of("slab-level", "seat-level"), curing.checks());
    assertEquals(Map.of("is-the-edge-sound", "Is the edge sound?"), curing.questions());
    assertFalse(
        stages.stream().filter(stage -> stage.id().equals("lift")).findFirst().get().holdPoint());
  }

  @Test
  void questionThatIsWipedOutStaysToBeTypedAnew() {
    form.model.edits().addStage("curing");
    form.model.edits().addRow(table(FormTable.Kind.QUESTIONS), "Is it dry?");
    form.type("stages.curing.questions.is-it-dry", "");
    assertEquals("Needed.", form.row("stages.curing.questions.is-it-dry").told());
    assertFalse(form.maySave());
    form.type("stages.curing.questions.is-it-dry", "Is it dry all over?");
    assertTrue(form.maySave(), form::mistakes);
  }

  @Test
  void stageMayComeAfterOneThatWasAdded() {
    form.model.edits().addStage("curing");
    form.model.edits().addStage("sawing");
    assertTrue(form.row("stages.sawing.after").field().choices().contains("curing"));
    assertFalse(form.row("stages.curing.after").field().choices().contains("curing"));
    form.type("stages.sawing.after", "curing");
    assertEquals("sawing", stored().stages().get(2).id());
  }

  @Test
  void temperaturesAreStoredInTheUsersDegrees() {
    form.type("stages.lift.steel_temperature", "-4,5");
    form.type("temperature.steel_range", "5; 35");
    form.type("temperature.read_within", "3");
    assertEquals("= -4.5 °C", form.row("stages.lift.steel_temperature").told());
    assertEquals("= 5 °C to 35 °C", form.row("temperature.steel_range").told());
    var metric = stored().steel();
    assertEquals(-4.5, metric.readCelsius().get("lift"));
    assertEquals(35, metric.highestCelsius());
    assertEquals(3, metric.withinKelvin());
    form.words.units(LengthDisplay.IMPERIAL);
    form.type("stages.lift.steel_temperature", "50");
    assertEquals("= 50 °F", form.row("stages.lift.steel_temperature").told());
    assertEquals(10, requireNonNull(stored().steel().readCelsius().get("lift")), 1e-9);
  }

  /** In the user's unit, told in words, and the same when it comes back from the job file. */
  @Test
  void limitInStepsIsTypedInOneLine() {
    form.type("tolerances.slab-size", "up to 3 m: 8, beyond: 12");
    form.type("tolerances.slab-flatness", "at 1 m: 3, at 4 m: 9, to whole mm");
    assertEquals(
        "Each limit holds up to and including its size, the last one also beyond.",
        form.row("tolerances.slab-size").told());
    assertTrue(form.row("tolerances.slab-flatness").told().contains("on the straight line"));
    Job job = stored();
    LimitRule size = requireNonNull(job.tolerances().get("slab-size")).rule();
    assertEquals(0.008, size.upperMetres(3));
    assertEquals(0.012, size.upperMetres(3.001));
    // 3 mm + 1/3 of 6 mm.
    LimitRule flat = requireNonNull(job.tolerances().get("slab-flatness")).rule();
    assertEquals(0.005, flat.upperMetres(2), 1e-12);
  }

  @Test
  void limitWithTwoBoundsIsReadBack() {
    form.type("tolerances.slab-diagonals", "lower -5, upper 10");
    assertEquals("= −5.0 mm to +10.0 mm", form.row("tolerances.slab-diagonals").told());
    form.type("tolerances.slab-diagonals", "upper 10");
    assertEquals("= at most +10.0 mm", form.row("tolerances.slab-diagonals").told());
  }

  @Test
  void mistakeInAStepIsToldInTheNamesOfTheForm() {
    form.type("tolerances.slab-size", "up to 3 m: wide, beyond: 12");
    String wrong = form.row("tolerances.slab-size").wrong();
    assertTrue(wrong.startsWith("“Permitted, "), wrong);
    assertTrue(wrong.contains("'wide' is not a value with a unit"), wrong);
    form.type("tolerances.slab-size", "up to 3 m: 8 mm, 12 mm");
    wrong = form.row("tolerances.slab-size").wrong();
    assertTrue(wrong.contains("of which “12 mm” is no step"), wrong);
    form.type("tolerances.slab-size", "at 1 m: 8 mm, beyond: 12 mm");
    wrong = form.row("tolerances.slab-size").wrong();
    assertTrue(wrong.contains("needs a size for each step"), wrong);
  }
}
