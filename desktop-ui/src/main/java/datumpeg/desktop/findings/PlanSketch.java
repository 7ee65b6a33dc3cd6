package datumpeg.desktop.findings;

import datumpeg.desktop.text.Standing;
import java.util.List;

/**
 * The plan with what was found, in metres, x along the building and y from side A toward side B.
 * What was found is drawn where {@code found + factor · deviation} puts it.
 *
 * @param outline the slab as designed, corner by corner
 * @param found the slab as found, exaggerated; empty when its corners were not measured
 * @param columns where columns stand by design
 * @param arrows leans, exaggerated
 * @param spans distances found, such as frame spacings
 * @param levels levels found
 * @param legend says what is drawn how many times too large
 * @param spoken the drawing in words
 * @param sentence why nothing but the design is drawn; empty when something is
 */
record PlanSketch(
    List<Spot> outline,
    List<Spot> found,
    List<Spot> columns,
    List<Arrow> arrows,
    List<Span> spans,
    List<Level> levels,
    String legend,
    String spoken,
    String sentence) {
  PlanSketch {
    outline = List.copyOf(outline);
    found = List.copyOf(found);
    columns = List.copyOf(columns);
    arrows = List.copyOf(arrows);
    spans = List.copyOf(spans);
    levels = List.copyOf(levels);
  }

  /** A named place. */
  record Spot(String name, double xMetres, double yMetres) {}

  /** From where a column stands to where its top would be, exaggerated. */
  record Arrow(
      double fromXMetres,
      double fromYMetres,
      double toXMetres,
      double toYMetres,
      String label,
      Standing standing) {}

  /** A distance between two places, with its deviation. */
  record Span(
      double fromXMetres,
      double fromYMetres,
      double toXMetres,
      double toYMetres,
      String label,
      Standing standing) {}

  /** A level against the mean. */
  record Level(double xMetres, double yMetres, String label) {}
}
