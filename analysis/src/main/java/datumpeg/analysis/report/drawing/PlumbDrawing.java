package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.UnknownPointException;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Columns in plan, each with an arrow to where its top leans and a box it may lean within. */
public final class PlumbDrawing {
  private static final double MARGIN = 84;
  private static final double HEIGHT = 250;

  /** The longest lean or limit, as a part of a bay or of half the span, whichever is less. */
  private static final double ROOM = 0.5;

  /** With more frames than this only what is out or undecided gets its figures. */
  private static final int MOST_LABELLED = 5;

  private final SetOut setOut;
  private final StageFindings findings;
  private final LengthFigures figures;
  private final Map<GridMark, List<Outcome>> columns;
  private final List<PlanPoint> outline;
  private final PlanView view;
  private final Exaggeration exaggeration;
  private final Sketch sketch = new Sketch(Drawing.PAGE_WIDTH, "Lean of the columns, in plan");

  private PlumbDrawing(
      SetOut setOut,
      StageFindings findings,
      LengthFigures figures,
      Map<GridMark, List<Outcome>> columns) {
    this.setOut = setOut;
    this.findings = findings;
    this.figures = figures;
    this.columns = columns;
    this.outline = List.copyOf(setOut.slab().corners().values());
    this.view = PlanView.fitting(outline, Drawing.PAGE_WIDTH, MARGIN, HEIGHT);
    this.exaggeration = Exaggeration.fitting(largest(), ROOM * room());
  }

  /** The drawing; empty if no column of the plan was plumbed. */
  public static Optional<Drawing> of(SetOut setOut, StageFindings findings, LengthFigures figures) {
    Map<GridMark, List<Outcome>> columns = new TreeMap<>();
    findings.outcomes().stream()
        .filter(outcome -> outcome.check().equals("column-plumb"))
        .forEach(
            outcome ->
                mark(setOut, outcome)
                    .ifPresent(
                        mark ->
                            columns.computeIfAbsent(mark, any -> new ArrayList<>()).add(outcome)));
    return columns.isEmpty()
        ? Optional.empty()
        : Optional.of(new PlumbDrawing(setOut, findings, figures, columns).drawing());
  }

  private static Optional<GridMark> mark(SetOut setOut, Outcome outcome) {
    Optional<GridMark> mark = GridMark.parse(outcome.target().replaceFirst("/.*", ""));
    try {
      mark.ifPresent(found -> setOut.position(PointName.at("column", found)));
      return mark;
    } catch (UnknownPointException unknown) {
      return Optional.empty();
    }
  }

  private Drawing drawing() {
    sketch.polygon(Ink.DESIGN, view.spots(outline));
    for (int number : setOut.portalFrameNumbers()) {
      sketch.line(Ink.GRID, spot(new GridMark('A', number)), spot(new GridMark('B', number)));
    }
    Compass.draw(sketch, view, outline);
    columns.forEach(this::column);
    columns.forEach(this::label);
    portals();
    ScaleBar.draw(sketch, unitsPerMetre(), figures, "lean at column height");
    return new Drawing("Plumb of the columns", sketch.picture(), caption());
  }

  private String caption() {
    return "Arrows: from the foot to where the top of the column leans, drawn "
        + exaggeration.text()
        + " larger than the plan. Dashed box: the permitted lean. Dotted oval: ± U about the top."
        + (labelsAll() ? "" : " Columns without figures conform; their figures are in the table.");
  }

  private double unitsPerMetre() {
    return view.unitsPerMetre() * exaggeration.factor();
  }

  private double largest() {
    return columns.values().stream()
        .flatMap(List::stream)
        .mapToDouble(outcome -> Math.max(Math.abs(outcome.deviation()), limit(outcome)))
        .max()
        .orElse(0);
  }

  private static double limit(Outcome outcome) {
    return outcome
        .limits()
        .map(limits -> Math.max(limits.upper().orElse(0), -limits.lower().orElse(0)))
        .orElse(0.0);
  }

  private double room() {
    double bay =
        setOut.building().baysMetres().stream().mapToDouble(Double::doubleValue).min().orElse(1);
    return Math.min(bay, setOut.building().spanMetres() / 2);
  }

  private Spot spot(GridMark mark) {
    return view.spot(setOut.position(PointName.at("base", mark)).plan());
  }

  private void column(GridMark mark, List<Outcome> outcomes) {
    Spot foot = spot(mark);
    Optional<Outcome> along = on(outcomes, "/along");
    Optional<Outcome> across = on(outcomes, "/across");
    limitBox(foot, along, across);
    Spot top =
        foot.moved(
            along.map(Outcome::deviation).orElse(0.0) * unitsPerMetre(),
            -across.map(Outcome::deviation).orElse(0.0) * unitsPerMetre());
    sketch.rectangle(Ink.SOLID, Box.around(foot, 2.5));
    uncertainty(top, along, across);
    sketch.arrow(foot, top);
    sketch.keepFree(Box.around(foot, 8));
  }

  private void uncertainty(Spot top, Optional<Outcome> along, Optional<Outcome> across) {
    sketch.ellipse(
        Ink.UNCERTAINTY,
        top,
        along.map(Outcome::expandedUncertainty).orElse(0.0) * unitsPerMetre(),
        across.map(Outcome::expandedUncertainty).orElse(0.0) * unitsPerMetre(),
        0);
  }

  /** A direction without limits, or not measured, leaves its sides of the box open. */
  private void limitBox(Spot foot, Optional<Outcome> along, Optional<Outcome> across) {
    double wide = along.map(PlumbDrawing::limit).orElse(0.0) * unitsPerMetre();
    double high = across.map(PlumbDrawing::limit).orElse(0.0) * unitsPerMetre();
    double openWide = wide > 0 ? wide : 12;
    double openHigh = high > 0 ? high : 12;
    for (int sign : new int[] {-1, 1}) {
      if (wide > 0) {
        sketch.line(
            Ink.LIMIT, foot.moved(sign * wide, -openHigh), foot.moved(sign * wide, openHigh));
      }
      if (high > 0) {
        sketch.line(
            Ink.LIMIT, foot.moved(-openWide, sign * high), foot.moved(openWide, sign * high));
      }
    }
  }

  private void label(GridMark mark, List<Outcome> outcomes) {
    boolean top = mark.letter() == 'B';
    Spot foot = spot(mark);
    double reach = Math.max(34, largestAcross() * unitsPerMetre());
    List<String> lines = new ArrayList<>();
    if (labelsAll() || worst(outcomes).filter(Verdict.CONFORMING::equals).isEmpty()) {
      outcomes.forEach(outcome -> lines.addAll(lines(outcome)));
    }
    Box name =
        new Label(
                foot.moved(0, top ? -reach - 8 : reach + 18),
                Anchor.MIDDLE,
                top ? Label.Side.ABOVE : Label.Side.BELOW,
                mark.text(),
                lines)
            .drawOn(sketch);
    VerdictMark.draw(sketch, new Spot(name.left() - 10, name.top() + 7), 6, worst(outcomes));
  }

  private double largestAcross() {
    return columns.values().stream()
        .flatMap(List::stream)
        .filter(outcome -> outcome.target().endsWith("/across"))
        .mapToDouble(outcome -> Math.max(limit(outcome), Math.abs(outcome.deviation())))
        .max()
        .orElse(0);
  }

  private List<String> lines(Outcome outcome) {
    String axis = outcome.target().replaceFirst(".*/", "");
    return List.of(
        axis + " " + figures.deviation(outcome.deviation(), outcome.expandedUncertainty()),
        CheckWords.verdict(outcome.verdict()));
  }

  private void portals() {
    findings.outcomes().stream()
        .filter(outcome -> outcome.check().equals("portal-plumb"))
        .filter(outcome -> labelsAll() || !outcome.is(Verdict.CONFORMING))
        .forEach(this::portal);
  }

  private void portal(Outcome outcome) {
    new Places(setOut)
        .of(outcome.check(), outcome.target())
        .ifPresent(
            place ->
                new Label(
                        view.spot(place).moved(0, -8),
                        Anchor.MIDDLE,
                        Label.Side.BELOW,
                        "frame " + outcome.target().replaceFirst("/.*", "") + " mean",
                        List.of(
                            figures.deviation(outcome.deviation(), outcome.expandedUncertainty()),
                            CheckWords.verdict(outcome.verdict())))
                    .drawOn(sketch));
  }

  private boolean labelsAll() {
    return setOut.building().portalFrameCount() <= MOST_LABELLED;
  }

  private static Optional<Outcome> on(List<Outcome> outcomes, String axis) {
    return outcomes.stream().filter(outcome -> outcome.target().endsWith(axis)).findFirst();
  }

  /** Nonconforming before undecided before conforming. */
  private static Optional<Verdict> worst(List<Outcome> outcomes) {
    List<Verdict> order = List.of(Verdict.NONCONFORMING, Verdict.UNDECIDED, Verdict.CONFORMING);
    return outcomes.stream()
        .flatMap(outcome -> outcome.verdict().stream())
        .min(Comparator.comparing(order::indexOf));
  }
}
