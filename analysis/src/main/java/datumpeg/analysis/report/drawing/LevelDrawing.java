package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A map of levels: triangles up and down, larger the farther from the mean. */
public final class LevelDrawing {
  private static final double MARGIN = 78;
  private static final double HEIGHT = 300;
  private static final double LARGEST_SYMBOL = 13;
  private static final double SMALLEST_SYMBOL = 6;
  private static final int MOST_CONTOURS = 6;

  private final Map<String, LevelEstimate> levels;
  private final LengthFigures figures;
  private final List<PlanPoint> outline;
  private final PlanView view;
  private final Sketch sketch;
  private final double top;
  private final double bottom;

  private LevelDrawing(
      SetOut setOut, Map<String, LevelEstimate> levels, LengthFigures figures, String title) {
    this.levels = levels;
    this.figures = figures;
    this.outline = List.copyOf(setOut.slab().corners().values());
    this.view = PlanView.fitting(outline, Drawing.PAGE_WIDTH, MARGIN, HEIGHT);
    this.sketch = new Sketch(Drawing.PAGE_WIDTH, title);
    this.top = view.spots(outline).stream().mapToDouble(Spot::y).min().orElse(0);
    this.bottom = view.spots(outline).stream().mapToDouble(Spot::y).max().orElse(0);
  }

  /**
   * The map of some points.
   *
   * @param levels by point name; empty gives no map
   */
  public static Optional<Drawing> of(
      SetOut setOut, Map<String, LevelEstimate> levels, LengthFigures figures, String title) {
    return levels.isEmpty()
        ? Optional.empty()
        : Optional.of(new LevelDrawing(setOut, levels, figures, title).drawing(title));
  }

  private Drawing drawing(String title) {
    sketch.polygon(Ink.DESIGN, view.spots(outline));
    Compass.draw(sketch, view, outline);
    contours();
    levels.values().forEach(this::symbol);
    levels.forEach(this::label);
    return new Drawing(title, sketch.picture(), caption());
  }

  /** The least round step that makes few lines, and that the uncertainty does not drown. */
  private double contourStepMetres() {
    double highest =
        levels.values().stream().mapToDouble(LevelEstimate::levelMetres).max().orElse(0);
    double lowest =
        levels.values().stream().mapToDouble(LevelEstimate::levelMetres).min().orElse(0);
    double least =
        Math.max((highest - lowest) / MOST_CONTOURS, 2 * widest()) / figures.unitMetres();
    double step = RoundSteps.atMost(Math.max(least, 1e-3) * 2.5);
    return Math.max(step, least) * figures.unitMetres();
  }

  private double widest() {
    return levels.values().stream()
        .mapToDouble(LevelEstimate::standardUncertaintyMetres)
        .max()
        .orElse(0);
  }

  private List<Contours.Piece> pieces() {
    List<PlanPoint> points =
        levels.values().stream()
            .map(level -> new PlanPoint(level.xMetres(), level.yMetres()))
            .toList();
    return new Contours(points, levels.values().stream().map(LevelEstimate::levelMetres).toList())
        .pieces(contourStepMetres());
  }

  /** Each line says its level once, on its longest piece. */
  private void contours() {
    List<List<Contours.Piece>> lines = Contours.joined(pieces());
    lines.stream()
        .flatMap(List::stream)
        .forEach(
            piece -> sketch.line(Ink.DIAGONAL, view.spot(piece.from()), view.spot(piece.to())));
    for (List<Contours.Piece> line : lines) {
      Contours.Piece longest =
          line.stream().max(Comparator.comparingDouble(Contours.Piece::length)).orElseThrow();
      Spot from = view.spot(longest.from());
      Spot to = view.spot(longest.to());
      sketch.words(
          new Spot((from.x() + to.x()) / 2, (from.y() + to.y()) / 2 + 4),
          Anchor.MIDDLE,
          Sketch.Weight.REGULAR,
          figures.signed(longest.level()));
    }
  }

  private String contourCaption() {
    return pieces().isEmpty()
        ? " No lines of equal level are drawn: the points do not differ by more than the"
            + " measurement shows, or are too few or too many."
        : " Lines: equal level every "
            + figures.step(contourStepMetres())
            + ", straight between the points measured.";
  }

  private String caption() {
    double widest = widest();
    return "Levels against the mean of the points shown, in "
        + figures.unitWord()
        + ", each ± "
        + figures.number(2 * widest)
        + " or better (k = 2). Filled triangle pointing up: higher than the mean by more than"
        + " that. Open triangle pointing down: lower. Ring: no difference shown by the"
        + " measurement."
        + contourCaption();
  }

  private void symbol(LevelEstimate level) {
    Spot spot = view.spot(new PlanPoint(level.xMetres(), level.yMetres()));
    double half = half(level);
    sketch.keepFree(Box.around(spot, half));
    if (Math.abs(level.levelMetres()) <= 2 * level.standardUncertaintyMetres()) {
      sketch.circle(Ink.PAPER, spot, SMALLEST_SYMBOL - 1);
      return;
    }
    double tip = level.levelMetres() > 0 ? -half : half;
    sketch.polygon(
        level.levelMetres() > 0 ? Ink.SOLID : Ink.PAPER,
        List.of(spot.moved(0, tip), spot.moved(half, -tip * 0.8), spot.moved(-half, -tip * 0.8)));
  }

  private double half(LevelEstimate level) {
    double largest =
        levels.values().stream().mapToDouble(one -> Math.abs(one.levelMetres())).max().orElse(0);
    double part = largest == 0 ? 0 : Math.abs(level.levelMetres()) / largest;
    return SMALLEST_SYMBOL + (LARGEST_SYMBOL - SMALLEST_SYMBOL) * part;
  }

  private void label(String name, LevelEstimate level) {
    Spot spot = view.spot(new PlanPoint(level.xMetres(), level.yMetres()));
    boolean upper = spot.y() < top + (bottom - top) * 0.2;
    boolean lower = spot.y() > bottom - (bottom - top) * 0.2;
    boolean edge = upper || lower;
    String place = PointName.parse(name).map(PointName::place).orElse(name).replace("@", "");
    String rank = rank(level);
    new Label(
            spot.moved(edge ? 0 : 18, upper ? -18 : lower ? 28 : 5),
            edge ? Anchor.MIDDLE : Anchor.START,
            upper ? Label.Side.ABOVE : Label.Side.BELOW,
            place + "  " + figures.signed(level.levelMetres()),
            rank.isEmpty() ? List.of() : List.of(rank))
        .drawOn(sketch);
  }

  private String rank(LevelEstimate level) {
    if (levels.size() < 2) {
      return "";
    }
    Comparator<LevelEstimate> byLevel = Comparator.comparingDouble(LevelEstimate::levelMetres);
    if (level.equals(levels.values().stream().max(byLevel).orElseThrow())) {
      return "HIGHEST";
    }
    return level.equals(levels.values().stream().min(byLevel).orElseThrow()) ? "LOWEST" : "";
  }
}
