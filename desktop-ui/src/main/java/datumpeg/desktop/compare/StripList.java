package datumpeg.desktop.compare;

import datumpeg.desktop.chart.CanvasPen;
import datumpeg.desktop.control.Drawing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.animation.AnimationTimer;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The axis and a drawing for each group, painted a few a pulse from the top: dozens of groups in
 * one pulse would stop the window for as long, and all of them in one drawing would be higher than
 * a canvas may be.
 *
 * <p>The JavaFX thread only.
 */
final class StripList extends VBox {
  private static final int STRIPS_OF_A_PULSE = 2;

  private final Drawing axis = drawing("strip-axis", StripPainter.AXIS);
  private final List<Drawing> drawings = new ArrayList<>();
  private final List<GroupStrip> painted = new ArrayList<>();
  private @Nullable ComparePage page;
  private int next;
  private final AnimationTimer timer =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          step();
        }
      };

  StripList() {
    getStyleClass().add("strips");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    getChildren().add(axis);
  }

  /** The first strips are painted at the next layout, the others in the pulses that follow. */
  void show(ComparePage newPage) {
    ComparePage before = page;
    page = newPage;
    setAccessibleText(newPage.spoken());
    if (before == null || !before.hasSameAxisAs(newPage)) {
      painted.clear();
      axis.paint(
          newPage.unit(),
          (graphics, palette) ->
              new StripPainter(newPage, new CanvasPen(graphics, palette)).axis());
    }
    int strips = newPage.strips().size();
    getChildren().remove(Math.min(getChildren().size(), 1 + strips), getChildren().size());
    next = 0;
    timer.start();
    step();
  }

  private void step() {
    ComparePage now = page;
    int todo = STRIPS_OF_A_PULSE;
    while (now != null && todo > 0 && next < now.strips().size()) {
      todo -= paint(now, next) ? 1 : 0;
      next++;
    }
    if (now == null || next >= now.strips().size()) {
      timer.stop();
    }
  }

  /** False if it is painted already. */
  private boolean paint(ComparePage now, int index) {
    GroupStrip strip = now.strips().get(index);
    if (index == drawings.size()) {
      drawings.add(drawing("strip", StripPainter.STRIP));
    }
    Drawing drawing = drawings.get(index);
    if (getChildren().size() == 1 + index) {
      getChildren().add(drawing);
    }
    if (index < painted.size() && strip.equals(painted.get(index))) {
      return false;
    }
    drawing.paint(
        strip.spoken(),
        (graphics, palette) ->
            new StripPainter(now, new CanvasPen(graphics, palette)).strip(strip, 0));
    if (index < painted.size()) {
      painted.set(index, strip);
    } else {
      painted.add(strip);
    }
    return true;
  }

  private static Drawing drawing(String styleClass, double letters) {
    Drawing drawing = new Drawing(styleClass);
    drawing.setStyle(
        String.format(
            Locale.ROOT, "-fx-pref-height: %1$.1fem; -fx-min-height: %1$.1fem;", letters));
    return drawing;
  }
}
