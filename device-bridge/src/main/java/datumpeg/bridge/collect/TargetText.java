package datumpeg.bridge.collect;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetFormatException;
import java.util.List;
import java.util.Optional;

/** Finds the target a text names when the quantity is not said, as in the acts of a capture. */
final class TargetText {
  private final SetOut setOut;
  private final List<Wanted> list;

  TargetText(SetOut setOut, List<Wanted> list) {
    this.setOut = setOut;
    this.list = list;
  }

  /**
   * The target of the measuring list with this text, else what the form of the text says: two
   * points a distance, a column a tilt, a direction a plumb offset, slab or seat a height, else an
   * offset.
   *
   * @throws TargetFormatException if the text names no target
   * @throws datumpeg.analysis.building.UnknownPointException if the plan does not have its points
   */
  Target find(String text) {
    Optional<Target> listed =
        list.stream().map(Wanted::target).filter(target -> target.text().equals(text)).findFirst();
    Target target = listed.orElseGet(() -> Target.parse(quantity(text), text));
    target.points().forEach(setOut::position);
    return target;
  }

  private static MeasuredQuantity quantity(String text) {
    if (text.matches(".+-[a-z]+\\..+")) {
      return MeasuredQuantity.DISTANCE;
    }
    if (text.startsWith("column.") || text.startsWith("mullion.")) {
      return MeasuredQuantity.TILT;
    }
    if (text.endsWith("/along") || text.endsWith("/across")) {
      return MeasuredQuantity.PLUMB_OFFSET;
    }
    return text.startsWith("slab.") || text.startsWith("seat.")
        ? MeasuredQuantity.HEIGHT
        : MeasuredQuantity.OFFSET;
  }
}
