package datumpeg.desktop.control;

import java.util.function.Consumer;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/**
 * A drawing that fills the place it is given and is painted anew when that changes.
 *
 * <p>The painter gets the canvas cleared; width and height are those of its canvas.
 */
public final class Drawing extends Region {
  private final Canvas canvas = new Canvas();
  private @Nullable Consumer<GraphicsContext> painter;

  public Drawing(String styleClass) {
    getStyleClass().addAll("drawing", styleClass);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    getChildren().add(canvas);
  }

  /**
   * Paints now and at every change of size.
   *
   * @param spoken the drawing in words
   */
  public void paint(String spoken, Consumer<GraphicsContext> newPainter) {
    setAccessibleText(spoken);
    painter = newPainter;
    repaint();
  }

  @Override
  protected void layoutChildren() {
    double width = snapSizeX(getWidth() - snappedLeftInset() - snappedRightInset());
    double height = snapSizeY(getHeight() - snappedTopInset() - snappedBottomInset());
    canvas.relocate(snappedLeftInset(), snappedTopInset());
    if (canvas.getWidth() != width || canvas.getHeight() != height) {
      canvas.setWidth(width);
      canvas.setHeight(height);
      repaint();
    }
  }

  private void repaint() {
    GraphicsContext graphics = canvas.getGraphicsContext2D();
    graphics.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    Consumer<GraphicsContext> now = painter;
    if (now != null && canvas.getWidth() > 0 && canvas.getHeight() > 0) {
      now.accept(graphics);
    }
  }
}
