package datumpeg.desktop.compare;

import datumpeg.desktop.control.Choice;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * All that the screen shows.
 *
 * @param strips one a group; none where there is nothing to draw
 * @param scale of the axis
 * @param unit of the axis
 * @param sentences what may be concluded and what not, or why nothing is drawn
 * @param spoken the drawing in words
 * @param csv the numbers, as a table for other programs; made only when it is wanted
 */
record ComparePage(
    Map<CompareMatter, List<Choice>> choices,
    Map<CompareMatter, String> chosen,
    Optional<LocalDate> from,
    Optional<LocalDate> to,
    List<GroupStrip> strips,
    StripScale scale,
    String unit,
    List<String> sentences,
    String spoken,
    Supplier<String> csv) {
  ComparePage {
    choices = Map.copyOf(choices);
    chosen = Map.copyOf(chosen);
    strips = List.copyOf(strips);
    sentences = List.copyOf(sentences);
  }

  /** Whether its strips lie on the same axis. */
  boolean hasSameAxisAs(ComparePage other) {
    return scale.equals(other.scale) && unit.equals(other.unit);
  }
}
