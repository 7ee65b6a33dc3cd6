package datumpeg.analysis.report.drawing;

import datumpeg.analysis.building.PlanPoint;
import datumpeg.analysis.report.writing.LengthFigures;
import java.util.ArrayList;
import java.util.List;

/** Directions of the building in words, and which edge of a plan is which. */
final class Compass {
  private Compass() {}

  /** "11.2 mm toward end n, 3.0 mm toward B"; empty if both parts are shown as zero. */
  static String direction(double alongMetres, double acrossMetres, LengthFigures figures) {
    List<String> parts = new ArrayList<>();
    part(parts, alongMetres, figures, "to end n", "to end 1");
    part(parts, acrossMetres, figures, "to B", "to A");
    return String.join(", ", parts);
  }

  private static void part(
      List<String> parts, double metres, LengthFigures figures, String up, String down) {
    String size = figures.number(Math.abs(metres));
    if (size.matches(".*[1-9].*")) {
      parts.add(size + " " + figures.unit() + " " + (metres > 0 ? up : down));
    }
  }

  /** Names the ends and sides around a plan. */
  static void draw(Sketch sketch, PlanView view, List<PlanPoint> outline) {
    List<Spot> spots = view.spots(outline);
    double left = spots.stream().mapToDouble(Spot::x).min().orElse(0);
    double right = spots.stream().mapToDouble(Spot::x).max().orElse(0);
    double middle = spots.stream().mapToDouble(Spot::y).average().orElse(0);
    sketch.words(
        new Spot(Math.max(2, left - 86), middle + 4), Anchor.START, Sketch.Weight.BOLD, "end 1");
    sketch.words(
        new Spot(Math.min(sketch.width() - 2, right + 86), middle + 4),
        Anchor.END,
        Sketch.Weight.BOLD,
        "end n");
  }
}
