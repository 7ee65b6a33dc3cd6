package datumpeg.desktop.form;

import datumpeg.analysis.report.drawing.Mark;
import datumpeg.analysis.report.drawing.Picture;
import datumpeg.desktop.control.Drawing;
import datumpeg.desktop.control.Labels;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.PicturePainter;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableNumberValue;
import javafx.scene.Node;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;

/** Plan and portal frame of what is typed, the field that has the keys drawn heavy. */
final class FormDrawings {
  private static final Set<String> PORTAL_FIELDS =
      Set.of(
          "building.eave_height",
          "building.roof",
          "building.pitch",
          "sections.column_depth",
          "sections.rafter_depth");
  private static final List<String> PLAN_FIELDS =
      List.of("building.", "slab.", "mullions.", "anchors.", "gutters.", "flatness.");
  private static final double SHARE = 0.47;

  private final Words words;
  private final Drawing plan = new Drawing("form-drawing");
  private final Drawing portal = new Drawing("form-drawing");
  private final Label noPlan = Labels.vanishing("sentence");
  private final Label noPortal = Labels.vanishing("sentence");
  private String lit = "";

  FormDrawings(Words words) {
    this.words = words;
    plan.setId("form-plan");
    portal.setId("form-portal");
  }

  /** What is drawn, from top to bottom, in a place of a height. */
  List<Node> nodes(ObservableNumberValue height) {
    for (Drawing drawing : List.of(plan, portal)) {
      drawing
          .prefHeightProperty()
          .bind(Bindings.createDoubleBinding(() -> SHARE * height.doubleValue(), height));
    }
    return List.of(plan, noPlan, portal, noPortal);
  }

  /** The drawing of a field's dimension; empty if it has none. */
  Optional<Node> of(String path) {
    if (PORTAL_FIELDS.contains(path)) {
      return Optional.of(portal);
    }
    return PLAN_FIELDS.stream().anyMatch(path::startsWith) ? Optional.of(plan) : Optional.empty();
  }

  /** The field that has the keys; none for an empty path. */
  void light(String path) {
    lit = path;
  }

  void draw(FormPage page) {
    BuildingShape shape = page.shape();
    boolean hasPlan = shape.spanMetres().isPresent() || shape.lengthMetres().isPresent();
    boolean hasPortal = shape.spanMetres().isPresent() || shape.eaveHeightMetres().isPresent();
    seen(plan, hasPlan);
    seen(portal, hasPortal);
    noPlan.setText(hasPlan ? "" : page.spokenPlan());
    noPortal.setText(hasPortal ? "" : page.spokenPortal());
    plan.paint(
        page.spokenPlan(),
        (graphics, palette) -> paint(graphics, palette, PlanSheet::of, page.shape()));
    portal.paint(
        page.spokenPortal(),
        (graphics, palette) -> paint(graphics, palette, PortalSheet::of, page.shape()));
  }

  private static void seen(Node node, boolean visible) {
    node.setVisible(visible);
    node.setManaged(visible);
  }

  /** Draws a sheet of a size in drawing units. */
  @FunctionalInterface
  private interface Sheets {
    Picture of(BuildingShape shape, Words words, String lit, double width, double height);
  }

  /** As many drawing units as make the drawing's letters those of the screen. */
  private void paint(
      GraphicsContext graphics, Palette palette, Sheets sheets, BuildingShape shape) {
    double unit = palette.em(1) / Mark.FONT_SIZE;
    double width = graphics.getCanvas().getWidth() / unit;
    double height = graphics.getCanvas().getHeight() / unit;
    new PicturePainter(sheets.of(shape, words, lit, width, height), graphics, palette).paint();
  }
}
