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
 * A row of points to look into: the wheel zooms where the pointer is, dragging moves along, the
 * pointer reads a point out. Keys: left and right go from point to point, page up and down move
 * along by what is in view, + and − zoom, home and end go to the ends, 0 shows all.
 *
 * <p>The JavaFX thread only.
 */
public final class LongChart extends StackPane {
  private static final double ZOOM_STEP = 1.25;
  private static final ChartLabels NO_LABELS =
      new ChartLabels("", "", "", "", index -> "", index -> "");

  private final Drawing drawing = new Drawing("long-chart-drawing");
  private final ReadOnlyObjectWrapper<ChartWindow> window =
      new ReadOnlyObjectWrapper<>(ChartWindow.all(0));
  private final ReadOnlyIntegerWrapper cursor = new ReadOnlyIntegerWrapper(-1);
  private ChartPoints points = ChartPoints.of(0, index -> 0).build();
  private ChartLabels labels = NO_LABELS;
  private String summary = "";
  private double letters = 15;
  private double draggedFrom = Double.NaN;
  private Consumer<String> reader = text -> {};

  public LongChart() {
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
  public void onRead(Consumer<String> newReader) {
    reader = newReader;
  }

  /**
   * Shows other points; what is in view stays if there are as many.
   *
   * @param newSummary the whole chart in words
   */
  public void show(ChartPoints newPoints, ChartLabels newLabels, String newSummary) {
    boolean another = newPoints.size() != points.size();
    points = newPoints;
    labels = newLabels;
    summary = newSummary;
    if (another) {
      window.set(ChartWindow.all(points.size()));
      cursor.set(-1);
    }
    read();
  }

  /** The part that is in view. */
  public ReadOnlyObjectProperty<ChartWindow> window() {
    return window.getReadOnlyProperty();
  }

  /** The point that is read out, from 0; −1 for none. */
  public ReadOnlyIntegerProperty cursor() {
    return cursor.getReadOnlyProperty();
  }

  /** What is in view, as an SVG picture in the light theme. */
  public String svg() {
    SvgPen pen = new SvgPen(Math.max(400, getWidth()), Math.max(300, getHeight()), Palette.light());
    new ChartPainter(points, window.get(), labels, -1, pen).paint();
    return pen.picture(summary);
  }

  /** Zooms about the middle of what is in view; a factor above 1 shows less. */
  public void zoom(double factor) {
    ChartWindow now = window.get();
    look(now.zoomed(factor, now.from() + now.width() / 2, points.size()));
  }

  /** Moves along by a share of what is in view. */
  public void move(double share) {
    look(window.get().moved(share * window.get().width(), points.size()));
  }

  public void showAll() {
    look(ChartWindow.all(points.size()));
  }

  private void scrolled(ScrollEvent event) {
    if (points.size() > 0 && event.getDeltaY() != 0) {
      double factor = event.getDeltaY() > 0 ? ZOOM_STEP : 1 / ZOOM_STEP;
      look(window.get().zoomed(factor, placeOf(event.getX()), points.size()));
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
    look(window.get().moved(by, points.size()));
  }

  private void keyed(KeyEvent event) {
    boolean known = true;
    switch (event.getCode()) {
      case LEFT -> step(-1);
      case RIGHT -> step(1);
      case PAGE_UP -> move(-0.8);
      case PAGE_DOWN -> move(0.8);
      case HOME -> point(0);
      case END -> point(points.size() - 1);
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
    int from =
        cursor.get() < 0 ? (by > 0 ? window.get().firstPoint() - 1 : points.size()) : cursor.get();
    point(from + by);
  }

  private void point(double place) {
    if (points.size() == 0) {
      return;
    }
    int index = (int) Math.max(0, Math.min(points.size() - 1, Math.rint(place)));
    cursor.set(index);
    window.set(window.get().showing(index, points.size()));
    read();
  }

  private void look(ChartWindow wanted) {
    window.set(wanted);
    paint();
  }

  private void read() {
    int at = cursor.get();
    String told = at < 0 || at >= points.size() ? "" : labels.told().apply(at);
    reader.accept(told);
    setAccessibleText((told + " " + summary).strip());
    paint();
  }

  private void paint() {
    drawing.paint(
        summary,
        (graphics, palette) -> {
          letters = palette.lettersPixels();
          new ChartPainter(
                  points, window.get(), labels, cursor.get(), new CanvasPen(graphics, palette))
              .paint();
        });
  }

  private double plotWidth() {
    return Math.max(
        1, drawing.getWidth() - letters * (ChartPainter.LEFT_LETTERS + ChartPainter.RIGHT_LETTERS));
  }

  private double placeOf(double x) {
    double inPlot = x - drawing.getLayoutX() - letters * ChartPainter.LEFT_LETTERS;
    return window.get().from() + inPlot / plotWidth() * window.get().width();
  }
}
