package datumpeg.desktop.jobs;

import datumpeg.desktop.control.Ink;
import datumpeg.desktop.control.Palette;
import datumpeg.desktop.control.StandingShape;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.geometry.Orientation;
import javafx.geometry.VPos;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import org.jspecify.annotations.Nullable;

/** A job's card, drawn. Its frame is the style sheet's. */
final class CardFace extends Region {
  private static final double CORNER_PIXELS = 6;

  private final Supplier<CardSetter> setters;
  private final Canvas canvas = new Canvas();
  private @Nullable JobCard card;
  private @Nullable CardLayout set;
  private @Nullable CardSetter setBy;
  private double setWidth;
  private boolean painted;

  /**
   * @param setters the setter for the present size of letters
   */
  CardFace(Supplier<CardSetter> setters) {
    this.setters = setters;
    getStyleClass().add("job-card");
    canvas.setMouseTransparent(true);
    getChildren().add(canvas);
    setOnMouseMoved(
        event -> setCursor(stageAt(event.getX(), event.getY()).isEmpty() ? null : Cursor.HAND));
  }

  void show(JobCard newCard) {
    if (!newCard.equals(card)) {
      card = newCard;
      set = null;
      requestLayout();
    }
  }

  /** The stage at a place within this node. */
  Optional<StageTile> stageAt(double x, double y) {
    CardLayout now = set;
    return now == null
        ? Optional.empty()
        : now.stageAt(x - snappedLeftInset(), y - snappedTopInset());
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefHeight(double width) {
    double wide = width < 0 ? getWidth() : width;
    CardLayout now = setFor(wide - snappedLeftInset() - snappedRightInset());
    return snappedTopInset() + (now == null ? 0 : now.height()) + snappedBottomInset();
  }

  private @Nullable CardLayout setFor(double width) {
    CardSetter setter = setters.get();
    JobCard now = card;
    if (now != null && (set == null || setWidth != width || setBy != setter)) {
      set = setter.set(now, width);
      painted = false;
      setWidth = width;
      setBy = setter;
    }
    return set;
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth() - snappedLeftInset() - snappedRightInset();
    CardLayout now = setFor(width);
    canvas.relocate(snappedLeftInset(), snappedTopInset());
    if (now != null && !painted && width > 0) {
      painted = true;
      canvas.setWidth(width);
      canvas.setHeight(now.height());
      paint(now, setters.get().palette());
    }
  }

  private void paint(CardLayout now, Palette palette) {
    GraphicsContext graphics = canvas.getGraphicsContext2D();
    graphics.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    now.tiles().forEach(tile -> paint(tile, graphics, palette));
    graphics.setStroke(palette.ink(Ink.STRONG_LINE));
    now.rules()
        .forEach(
            rule ->
                graphics.strokeLine(rule.left(), rule.y(), rule.left() + rule.width(), rule.y()));
    now.marks()
        .forEach(
            mark ->
                StandingShape.of(mark.standing())
                    .paint(
                        graphics, palette.ink(mark.standing()), mark.x(), mark.y(), mark.size()));
    graphics.setTextBaseline(VPos.BASELINE);
    for (CardLayout.Line line : now.lines()) {
      graphics.setFont(line.face().font());
      graphics.setFill(palette.ink(line.ink()));
      graphics.fillText(line.text(), line.x(), Math.rint(line.y()));
    }
  }

  /** What was not measured has a dashed edge, so that it differs by more than its words. */
  private static void paint(CardLayout.Tile tile, GraphicsContext graphics, Palette palette) {
    boolean measured = !tile.stage().counts().isEmpty();
    double line = palette.heavyLetters() ? 2 : 1;
    double left = Math.rint(tile.left()) + line / 2;
    double top = Math.rint(tile.top()) + line / 2;
    double width = Math.rint(tile.width()) - line;
    double height = Math.floor(tile.height()) - line;
    graphics.save();
    graphics.setLineWidth(line);
    if (measured) {
      graphics.setFill(palette.ink(Ink.RAISED));
      graphics.fillRoundRect(left, top, width, height, CORNER_PIXELS, CORNER_PIXELS);
    } else {
      graphics.setLineDashes(2, 2);
    }
    graphics.setStroke(palette.ink(measured ? Ink.STRONG_LINE : Ink.LINE));
    graphics.strokeRoundRect(left, top, width, height, CORNER_PIXELS, CORNER_PIXELS);
    graphics.restore();
  }
}
