package datumpeg.desktop.control;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javafx.beans.value.ObservableValue;
import javafx.css.CssMetaData;
import javafx.css.Styleable;
import javafx.css.StyleableProperty;
import javafx.css.StyleablePropertyFactory;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import org.jspecify.annotations.Nullable;

/**
 * A drawing that fills the place it is given and is painted anew when that, the theme or the size
 * of letters changes.
 *
 * <p>The painter gets the canvas cleared; width and height are those of its canvas.
 */
public final class Drawing extends Region {
  /** The size of plain text at 100 %. */
  static final double USUAL_LETTERS_PIXELS = 15;

  /** Paints a drawing. */
  @FunctionalInterface
  public interface Painter {
    void paint(GraphicsContext graphics, Palette palette);
  }

  private final Canvas canvas = new Canvas();
  private final StyleablePropertyFactory<Drawing> factory =
      new StyleablePropertyFactory<>(Region.getClassCssMetaData());
  private final Map<Ink, StyleableProperty<Color>> inks = new EnumMap<>(Ink.class);
  private final StyleableProperty<Number> letters;
  private @Nullable Painter painter;

  public Drawing(String styleClass) {
    for (Ink ink : Ink.values()) {
      String name = ink.styleName();
      StyleableProperty<Color> property =
          factory.createStyleableColorProperty(
              this, name, "-ink-" + name, drawing -> drawing.property(ink), ink.light());
      inks.put(ink, property);
      repaintOn(property);
    }
    letters =
        factory.createStyleableNumberProperty(
            this, "letters", "-letters", Drawing::letters, USUAL_LETTERS_PIXELS);
    repaintOn(letters);
    getStyleClass().addAll("drawing", styleClass);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    getChildren().add(canvas);
  }

  /**
   * Paints now and at every change of size, theme and letters.
   *
   * @param spoken the drawing in words
   */
  public void paint(String spoken, Painter newPainter) {
    setAccessibleText(spoken);
    painter = newPainter;
    repaint();
  }

  @Override
  public List<CssMetaData<? extends Styleable, ?>> getCssMetaData() {
    return factory.getCssMetaData();
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

  private StyleableProperty<Color> property(Ink ink) {
    StyleableProperty<Color> property = inks.get(ink);
    if (property == null) {
      throw new IllegalStateException(ink + " is asked for before it is there");
    }
    return property;
  }

  private StyleableProperty<Number> letters() {
    return letters;
  }

  private void repaintOn(StyleableProperty<?> property) {
    ((ObservableValue<?>) property).addListener((changed, before, now) -> repaint());
  }

  private Palette palette() {
    Map<Ink, Color> now = new EnumMap<>(Ink.class);
    inks.forEach((ink, property) -> now.put(ink, property.getValue()));
    return new Palette(now, letters.getValue().doubleValue());
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
