package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** The slab's outline as designed and as found, its deviations drawn many times larger. */
public final class PlanDrawing {
  private static final double MARGIN = 92;
  private static final double HEIGHT = 330;

  /** How large the largest deviation may be drawn, as a part of the plan's larger side. */
  private static final double ROOM = 0.12;

  /** With more corners than this the figures stand in the table only. */
  private static final int MOST_LABELLED = 6;

  private final StageFindings findings;
  private final LengthFigures figures;
  private final SlabShape shape;
  private final List<CornerShift> shifts;
  private final List<PlanPoint> outline;
  private final PlanView view;
  private final Exaggeration exaggeration;
  private final Sketch sketch = new Sketch(Drawing.PAGE_WIDTH, "Plan of the slab, as found");

  private PlanDrawing(
      StageFindings findings, LengthFigures figures, SlabShape shape, List<CornerShift> shifts) {
    this.findings = findings;
    this.figures = figures;
    this.shape = shape;
    this.shifts = shifts;
    this.outline = List.copyOf(shape.corners().values());
    this.view = PlanView.fitting(outline, Drawing.PAGE_WIDTH, MARGIN, HEIGHT);
    this.exaggeration = Exaggeration.fitting(largest(), ROOM * extent());
  }

  /** The plan; empty if fewer than three corners were found. */
  public static Optional<Drawing> of(SetOut setOut, StageFindings findings, LengthFigures figures) {
    SlabShape shape = SlabShape.of(setOut.slab().corners());
    List<CornerShift> shifts = shape.shifts(findings.points());
    return shifts.size() < 3
        ? Optional.empty()
        : Optional.of(new PlanDrawing(findings, figures, shape, shifts).drawing());
  }

  private Drawing drawing() {
    sketch.polygon(Ink.DESIGN, view.spots(outline));
    diagonals();
    sketch.polygon(
        Ink.FOUND, shifts.stream().map(shift -> view.spot(shift.drawn(exaggeration))).toList());
    shifts.forEach(this::uncertainty);
    shifts.forEach(
        shift -> sketch.arrow(view.spot(shift.design()), view.spot(shift.drawn(exaggeration))));
    Compass.draw(sketch, view, outline);
    shifts.forEach(this::cornerLabel);
    sides();
    ScaleBar.draw(sketch, view.unitsPerMetre() * exaggeration.factor(), figures, "deviation");
    return new Drawing("The slab in plan", sketch.picture(), caption());
  }

  private String caption() {
    return "Thin line: as designed. Heavy line: as found, deviations drawn "
        + exaggeration.text()
        + " larger than the plan. Arrows: which way a corner is out, with corner A1 held and side"
        + " A on its line. Dashed ellipses: where each corner is with 95 % confidence, drawn as"
        + " many times larger.";
  }

  private double largest() {
    return shifts.stream()
        .mapToDouble(shift -> shift.lengthMetres() + shift.firstHalfMetres())
        .max()
        .orElse(0);
  }

  private double extent() {
    double along = outline.stream().mapToDouble(PlanPoint::xMetres).max().orElse(0);
    double across = outline.stream().mapToDouble(PlanPoint::yMetres).max().orElse(0);
    return Math.max(
        along - outline.stream().mapToDouble(PlanPoint::xMetres).min().orElse(0),
        across - outline.stream().mapToDouble(PlanPoint::yMetres).min().orElse(0));
  }

  private void uncertainty(CornerShift shift) {
    double units = view.unitsPerMetre() * exaggeration.factor();
    if (shift.firstHalfMetres() * units > 0.5) {
      // The paper's y runs down, the plan's up: a turn to the left becomes one to the right.
      sketch.ellipse(
          Ink.UNCERTAINTY,
          view.spot(shift.drawn(exaggeration)),
          shift.firstHalfMetres() * units,
          shift.secondHalfMetres() * units,
          -StrictMath.toDegrees(shift.firstAxisRadians()));
    }
  }

  private void diagonals() {
    if (outline.size() != 4) {
      return;
    }
    List<Spot> spots = view.spots(outline);
    sketch.line(Ink.DIAGONAL, spots.get(0), spots.get(2));
    sketch.line(Ink.DIAGONAL, spots.get(1), spots.get(3));
    findings
        .outcome("slab-diagonals", "slab")
        .ifPresent(
            outcome -> {
              Spot middle =
                  new Spot(
                      (spots.get(0).x() + spots.get(2).x()) / 2,
                      (spots.get(0).y() + spots.get(2).y()) / 2);
              new Label(
                      middle.moved(
                          0, -2.5 * Sketch.LINE_HEIGHT), // off the rows of the sides' labels
                      Anchor.MIDDLE,
                      Label.Side.BELOW,
                      "diagonals differ by "
                          + figures.number(outcome.measured())
                          + " "
                          + figures.unit(),
                      List.of(
                          "± "
                              + figures.number(outcome.expandedUncertainty())
                              + " "
                              + figures.unit(),
                          verdict(outcome)))
                  .drawOn(sketch);
            });
  }

  private void cornerLabel(CornerShift shift) {
    Spot design = view.spot(shift.design());
    Spot drawn = view.spot(shift.drawn(exaggeration));
    boolean top = isUpper(shift.design());
    double y = top ? Math.min(design.y(), drawn.y()) - 14 : Math.max(design.y(), drawn.y()) + 24;
    boolean right = design.x() > sketch.width() / 2;
    new Label(
            new Spot(design.x() + (right ? 30 : -30), y),
            right ? Anchor.END : Anchor.START,
            top ? Label.Side.ABOVE : Label.Side.BELOW,
            shift.corner(),
            shape.corners().size() > MOST_LABELLED ? List.of() : cornerLines(shift))
        .drawOn(sketch);
  }

  private List<String> cornerLines(CornerShift shift) {
    List<String> lines = new ArrayList<>();
    String way = Compass.direction(shift.alongMetres(), shift.acrossMetres(), figures);
    if (!way.isEmpty()) {
      lines.add(way);
    }
    findings
        .outcome("slab-square", shift.corner())
        .ifPresent(
            outcome -> {
              lines.add(
                  "angle " + figures.deviation(outcome.deviation(), outcome.expandedUncertainty()));
              lines.add(verdict(outcome));
            });
    return lines;
  }

  private boolean isUpper(PlanPoint point) {
    double middle = outline.stream().mapToDouble(PlanPoint::yMetres).average().orElse(0);
    return point.yMetres() > middle;
  }

  private void sides() {
    if (shape.corners().size() > MOST_LABELLED) {
      return;
    }
    findings.outcomes().stream()
        .filter(outcome -> outcome.check().equals("slab-size"))
        .forEach(this::side);
  }

  private void side(Outcome outcome) {
    String[] ends = outcome.target().split("-");
    PlanPoint one = shape.corners().get(ends[0]);
    PlanPoint other = shape.corners().get(ends[ends.length - 1]);
    if (ends.length != 2 || one == null || other == null) {
      return;
    }
    Spot a = view.spot(one);
    Spot b = view.spot(other);
    Spot middle = new Spot((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    boolean lengthwise = Math.abs(a.x() - b.x()) > Math.abs(a.y() - b.y());
    boolean left = middle.x() < sketch.width() / 2;
    boolean top = isUpper(new PlanPoint(0, (one.yMetres() + other.yMetres()) / 2));
    List<String> lines =
        List.of(
            figures.deviation(outcome.deviation(), outcome.expandedUncertainty()),
            verdict(outcome));
    Label label =
        lengthwise
            ? new Label(
                middle.moved(
                    0, top ? 26 + reach(PlanPoint::yMetres) : -16 - reach(PlanPoint::yMetres)),
                Anchor.MIDDLE,
                top ? Label.Side.BELOW : Label.Side.ABOVE,
                sideName(outcome, true),
                lines)
            : new Label(
                middle.moved(
                    left ? 12 + reach(PlanPoint::xMetres) : -12 - reach(PlanPoint::xMetres), -8),
                left ? Anchor.START : Anchor.END,
                Label.Side.BELOW,
                sideName(outcome, false),
                lines);
    label.drawOn(sketch);
  }

  /** How far a heavy line may lie inside a thin one, in drawing units. */
  private double reach(ToDoubleFunction<PlanPoint> part) {
    return view.unitsPerMetre()
        * exaggeration.factor()
        * shifts.stream().map(this::inward).mapToDouble(part).max().orElse(0);
  }

  private PlanPoint inward(CornerShift shift) {
    double middle = outline.stream().mapToDouble(PlanPoint::xMetres).average().orElse(0);
    double along = shift.alongMetres() * (shift.design().xMetres() > middle ? -1 : 1);
    double across = shift.acrossMetres() * (isUpper(shift.design()) ? -1 : 1);
    return new PlanPoint(Math.max(0, along), Math.max(0, across));
  }

  private String sideName(Outcome outcome, boolean lengthwise) {
    boolean metric = figures.display() == LengthDisplay.METRIC;
    String size = figures.size(outcome.measured()) + (metric ? " mm" : "");
    return lengthwise
        ? CheckWords.target(outcome.check(), outcome.target()) + ": " + size
        : outcome.target() + ": " + size;
  }

  private static String verdict(Outcome outcome) {
    return CheckWords.verdict(outcome.verdict());
  }
}
