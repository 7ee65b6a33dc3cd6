package datumpeg.desktop.control;

import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;

/**
 * A value in letters as large as its place allows, to be read from afar.
 *
 * <p>Letters 16 mm high can be read at 3 m: 18 minutes of arc, where ISO 9241-303:2011 asks for 16
 * at least (figure from memory). In a place too small for that they are as large as it allows.
 */
public final class BigFigure extends Region {
  private static final double PROBE_PIXELS = 100;
  private static final double LARGEST_PIXELS = 260;

  private final Text text = new Text();

  public BigFigure(String styleClass) {
    getStyleClass().addAll("big-figure", styleClass);
    setAccessibleRole(AccessibleRole.TEXT);
    text.setTextOrigin(VPos.TOP);
    text.getStyleClass().add("big-text");
    getChildren().add(text);
  }

  public void setText(String value) {
    if (!value.equals(text.getText())) {
      text.setText(value);
      setAccessibleText(value);
      requestLayout();
    }
  }

  public String getText() {
    return text.getText();
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth() - snappedLeftInset() - snappedRightInset();
    double height = getHeight() - snappedTopInset() - snappedBottomInset();
    text.setFont(font(PROBE_PIXELS));
    double wide = Math.max(1, text.getLayoutBounds().getWidth());
    double high = Math.max(1, text.getLayoutBounds().getHeight());
    double times = Math.max(0.05, Math.min(width / wide, height / high));
    text.setFont(font(Math.min(LARGEST_PIXELS, PROBE_PIXELS * times)));
    text.relocate(
        snappedLeftInset(),
        snappedTopInset() + Math.max(0, (height - text.getLayoutBounds().getHeight()) / 2));
  }

  private static Font font(double pixels) {
    return Font.font(null, FontWeight.BOLD, pixels);
  }
}
