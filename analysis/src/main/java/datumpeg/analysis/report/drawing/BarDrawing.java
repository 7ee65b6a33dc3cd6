package datumpeg.analysis.report.drawing;

import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.ArrayList;
import java.util.List;

/** A bar for each deviation, its uncertainty and its limits on one axis of millimetres. */
public final class BarDrawing {
  private static final double LEFT = 218;
  private static final double RIGHT = 468;
  private static final double ROW = 24;

  /** What fits on a page under its heading. */
  private static final int ROWS_A_DRAWING = 30;

  private final List<Outcome> outcomes;
  private final LengthFigures figures;
  private final double unitsPerMetre;
  private final double zero;
  private final Sketch sketch = new Sketch(Drawing.PAGE_WIDTH, "Deviations as bars");

  private BarDrawing(List<Outcome> outcomes, LengthFigures figures, double reachMetres) {
    this.outcomes = outcomes;
    this.figures = figures;
    this.unitsPerMetre = (RIGHT - LEFT) / (2 * reachMetres);
    this.zero = (LEFT + RIGHT) / 2;
  }

  /** Drawings of at most thirty bars each, all to one scale; none for no outcomes. */
  public static List<Drawing> of(List<Outcome> outcomes, LengthFigures figures, String title) {
    double reach =
        outcomes.stream().mapToDouble(BarDrawing::reachMetres).max().orElse(0) * 1.08 + 1e-6;
    List<Drawing> drawings = new ArrayList<>();
    for (int from = 0; from < outcomes.size(); from += ROWS_A_DRAWING) {
      int to = Math.min(outcomes.size(), from + ROWS_A_DRAWING);
      drawings.add(
          new BarDrawing(outcomes.subList(from, to), figures, reach)
              .drawing(from == 0 ? title : title + ", continued"));
    }
    return drawings;
  }

  private static double reachMetres(Outcome outcome) {
    double value = Math.abs(outcome.deviation()) + outcome.expandedUncertainty();
    return outcome
        .limits()
        .map(limits -> Math.max(value, Math.max(upper(limits), lower(limits))))
        .orElse(value);
  }

  private static double upper(Limits limits) {
    return Math.abs(limits.upper().orElse(0));
  }

  private static double lower(Limits limits) {
    return Math.abs(limits.lower().orElse(0));
  }

  private Drawing drawing(String title) {
    double bottom = outcomes.size() * ROW;
    axis(bottom);
    for (int row = 0; row < outcomes.size(); row++) {
      row(outcomes.get(row), (row + 0.5) * ROW);
    }
    return new Drawing(title, sketch.picture(), caption());
  }

  private String caption() {
    return "Grey bar: deviation from the plan, longer to the right, shorter to the left. Whisker:"
        + " its expanded uncertainty. Square brackets: the limits.";
  }

  private void axis(double bottom) {
    double step = RoundSteps.atMost(62 / (unitsPerMetre * figures.unitMetres()));
    double units = step * figures.unitMetres() * unitsPerMetre;
    int most = (int) Math.floor((RIGHT - zero) / units);
    for (int tick = -most; tick <= most; tick++) {
      double x = zero + tick * units;
      sketch.line(tick == 0 ? Ink.THIN : Ink.GRID, new Spot(x, 0), new Spot(x, bottom + 4));
      sketch.bareWords(
          new Spot(x, bottom + 18),
          Anchor.MIDDLE,
          Sketch.Weight.REGULAR,
          tick == 0 ? "0" : tickWords(tick * step));
    }
    sketch.bareWords(
        new Spot(RIGHT + 22, bottom + 18), Anchor.START, Sketch.Weight.REGULAR, figures.unit());
  }

  private String tickWords(double value) {
    String size = figures.step(Math.abs(value) * figures.unitMetres());
    return (value < 0 ? "−" : "+") + size.replaceFirst(" .*", "");
  }

  private void row(Outcome outcome, double y) {
    sketch.bareWords(new Spot(6, y + 5), Anchor.START, Sketch.Weight.BOLD, name(outcome));
    double end = x(outcome.deviation());
    sketch.rectangle(Ink.GREY, new Box(Math.min(zero, end), y - 5, Math.abs(end - zero), 10));
    whisker(outcome, y);
    outcome.limits().ifPresent(limits -> limits(limits, y));
    VerdictMark.draw(sketch, new Spot(RIGHT + 16, y), 6.5, outcome.verdict());
    sketch.bareWords(
        new Spot(RIGHT + 28, y + 5),
        Anchor.START,
        Sketch.Weight.REGULAR,
        figures.deviation(outcome.deviation(), outcome.expandedUncertainty())
            + "  "
            + CheckWords.verdict(outcome.verdict()));
  }

  private static String name(Outcome outcome) {
    String target = CheckWords.target(outcome.check(), outcome.target());
    return switch (outcome.check()) {
      case "frame-spacing" -> target;
      case "spacing-match" -> target + ", eave − base";
      case "clear-span" -> "Span, " + target;
      default -> CheckWords.check(outcome.check()) + ", " + target;
    };
  }

  private void whisker(Outcome outcome, double y) {
    double from = x(outcome.deviation() - outcome.expandedUncertainty());
    double to = x(outcome.deviation() + outcome.expandedUncertainty());
    sketch.line(Ink.THIN, new Spot(from, y), new Spot(to, y));
    sketch.line(Ink.THIN, new Spot(from, y - 4), new Spot(from, y + 4));
    sketch.line(Ink.THIN, new Spot(to, y - 4), new Spot(to, y + 4));
  }

  private void limits(Limits limits, double y) {
    limits.lower().ifPresent(metres -> bracket(x(metres), y, 5));
    limits.upper().ifPresent(metres -> bracket(x(metres), y, -5));
  }

  private void bracket(double x, double y, double foot) {
    sketch.line(Ink.FOUND, new Spot(x, y - 9), new Spot(x, y + 9));
    sketch.line(Ink.THIN, new Spot(x, y - 9), new Spot(x + foot, y - 9));
    sketch.line(Ink.THIN, new Spot(x, y + 9), new Spot(x + foot, y + 9));
  }

  private double x(double metres) {
    return zero + metres * unitsPerMetre;
  }
}
