package datumpeg.desktop.chart;

import datumpeg.desktop.control.Drawing;
import datumpeg.desktop.control.Palette;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.AccessibleRole;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.StackPane;

/**
 * A drawing of a row of points to look into: the wheel zooms where the pointer is, dragging moves
 * along, the pointer reads a point out. Keys: left and right go from point to point, page up and
 * down move along by what is in view, + and − zoom, home and end go to the ends, 0 shows all.
 *
 * <p>The JavaFX thread only.
 */
public abstract class LookedInto extends StackPane {
  private static final double ZOOM_STEP = 1.25;

  private final Drawing drawing;
  private final double leftLetters;
  private final double rightLetters;
  private final ReadOnlyObjectWrapper<ChartWindow> window =
      new ReadOnlyObjectWrapper<>(ChartWindow.all(0));
  private final ReadOnlyIntegerWrapper cursor = new ReadOnlyIntegerWrapper(-1);
  private int size;
  private String summary = "";
  private double letters = 15;
  private double draggedFrom = Double.NaN;
  private Consumer<String> reader = text -> {};

  /**
   * Nothing to look into yet.
   *
   * @param styleClass of the drawing
   * @param leftLetters what the drawing needs beside its points on the left, in letter sizes
   * @param rightLetters the same on the right
   */
  protected LookedInto(String styleClass, double leftLetters, double rightLetters) {
    this.drawing = new Drawing(styleClass);
    this.leftLetters = leftLetters;
    this.rightLetters = rightLetters;
    getStyleClass().add("long-chart");
    setFocusTraversable(true);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    getChildren().add(drawing);
    addEventHandler(ScrollEvent.SCROLL, this::scrolled);
    addEventHandler(MouseEvent.MOUSE_MOVED, event -> point(placeOf(event.getX())));
    addEventHandler(MouseEvent.MOUSE_PRESSED, this::pressed);
    addEventHandler(MouseEvent.MOUSE_DRAGGED, this::dragged);
    addEventHandler(KeyEvent.KEY_PRESSED, this::keyed);
  }

  /** Is told in words the point that is read out. */
  public final void onRead(Consumer<String> newReader) {
    reader = newReader;
  }

  /** The point in words. */
  protected abstract String told(int index);

  /**
   * Paints what is in view.
   *
   * @param read the point that is read out; −1 for none
   */
  protected abstract void paint(ChartWindow inView, int read, Pen pen);

  /**
   * There are other points; what is in view stays if there are as many.
   *
   * @param newSummary the whole drawing in words
   */
  protected final void looksInto(int newSize, String newSummary) {
    boolean another = newSize != size;
    size = newSize;
    summary = newSummary;
    if (another) {
      window.set(ChartWindow.all(size));
      cursor.set(-1);
    }
    read();
  }

  /** The part that is in view. */
  public final ReadOnlyObjectProperty<ChartWindow> window() {
    return window.getReadOnlyProperty();
  }

  /** The point that is read out, from 0; −1 for none. */
  public final ReadOnlyIntegerProperty cursor() {
    return cursor.getReadOnlyProperty();
  }

  /** What is in view, as an SVG picture in the light theme. */
  public final String svg() {
    SvgPen pen = new SvgPen(Math.max(600, getWidth()), Math.max(400, getHeight()), Palette.light());
    paint(window.get(), -1, pen);
    return pen.picture(summary);
  }

  /** Zooms about the middle of what is in view; a factor above 1 shows less. */
  public final void zoom(double factor) {
    ChartWindow now = window.get();
    look(now.zoomed(factor, now.from() + now.width() / 2, size));
  }

  /** Moves along by a share of what is in view. */
  public final void move(double share) {
    look(window.get().moved(share * window.get().width(), size));
  }

  public final void showAll() {
    look(ChartWindow.all(size));
  }

  private void scrolled(ScrollEvent event) {
    if (size > 0 && event.getDeltaY() != 0) {
      double factor = event.getDeltaY() > 0 ? ZOOM_STEP : 1 / ZOOM_STEP;
      look(window.get().zoomed(factor, placeOf(event.getX()), size));
      event.consume();
    }
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    draggedFrom = event.getX();
    point(placeOf(event.getX()));
  }

  private void dragged(MouseEvent event) {
    double by = (draggedFrom - event.getX()) / plotWidth() * window.get().width();
    draggedFrom = event.getX();
    look(window.get().moved(by, size));
  }

  private void keyed(KeyEvent event) {
    boolean known = true;
    switch (event.getCode()) {
      case LEFT -> step(-1);
      case RIGHT -> step(1);
      case PAGE_UP -> move(-0.8);
      case PAGE_DOWN -> move(0.8);
      case HOME -> point(0);
      case END -> point(size - 1);
      case PLUS, ADD, EQUALS -> zoom(ZOOM_STEP);
      case MINUS, SUBTRACT -> zoom(1 / ZOOM_STEP);
      case DIGIT0, NUMPAD0 -> showAll();
      default -> known = false;
    }
    if (known && !event.isShortcutDown()) {
      event.consume();
    }
  }

  private void step(int by) {
    int from = cursor.get() < 0 ? (by > 0 ? window.get().firstPoint() - 1 : size) : cursor.get();
    point(from + by);
  }

  private void point(double place) {
    if (size == 0) {
      return;
    }
    int index = (int) Math.max(0, Math.min(size - 1, Math.rint(place)));
    cursor.set(index);
    window.set(window.get().showing(index, size));
    read();
  }

  private void look(ChartWindow wanted) {
    window.set(wanted);
    paint();
  }

  private void read() {
    int at = cursor.get();
    String told = at < 0 || at >= size ? "" : told(at);
    reader.accept(told);
    setAccessibleText((told + " " + summary).strip());
    paint();
  }

  private void paint() {
    drawing.paint(
        summary,
        (graphics, palette) -> {
          letters = palette.lettersPixels();
          paint(window.get(), cursor.get(), new CanvasPen(graphics, palette));
        });
  }

  private double plotWidth() {
    return Math.max(1, drawing.getWidth() - letters * (leftLetters + rightLetters));
  }

  private double placeOf(double x) {
    double inPlot = x - drawing.getLayoutX() - letters * leftLetters;
    return window.get().from() + inPlot / plotWidth() * window.get().width();
  }
}
