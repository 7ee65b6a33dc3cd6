package datumpeg.desktop.control;

import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import org.jspecify.annotations.Nullable;

/**
 * A drawing that fills the place it is given and is painted anew when that, the theme or the size
 * of letters changes: once, when the window is laid out, however much has changed.
 *
 * <p>The painter gets the canvas cleared; width and height are those of its canvas.
 */
public final class Drawing extends Inked {

  /** Paints a drawing. */
  @FunctionalInterface
  public interface Painter {
    void paint(GraphicsContext graphics, Palette palette);
  }

  private final Canvas canvas = new Canvas();
  private @Nullable Painter painter;
  private boolean stale;

  public Drawing(String styleClass) {
    getStyleClass().addAll("drawing", styleClass);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    getChildren().add(canvas);
  }

  /**
   * Paints at the next layout and at every change of size, theme and letters.
   *
   * @param spoken the drawing in words
   */
  public void paint(String spoken, Painter newPainter) {
    setAccessibleText(spoken);
    painter = newPainter;
    inksChanged();
  }

  @Override
  void inksChanged() {
    stale = true;
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    double width = snapSizeX(getWidth() - snappedLeftInset() - snappedRightInset());
    double height = snapSizeY(getHeight() - snappedTopInset() - snappedBottomInset());
    canvas.relocate(snappedLeftInset(), snappedTopInset());
    if (stale || canvas.getWidth() != width || canvas.getHeight() != height) {
      stale = false;
      canvas.setWidth(width);
      canvas.setHeight(height);
      repaint();
    }
  }

  private void repaint() {
    GraphicsContext graphics = canvas.getGraphicsContext2D();
    graphics.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    Painter now = painter;
    if (now != null && canvas.getWidth() > 0 && canvas.getHeight() > 0) {
      now.paint(graphics, palette());
    }
  }
}
