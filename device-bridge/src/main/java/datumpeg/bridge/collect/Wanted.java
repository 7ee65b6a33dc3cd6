package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the session asks for next.
 *
 * @param face 1 or 2 of a tilt meter, 0 for everything else
 * @param expectedSi what the plan says it reads, in metres or radians; empty where it says nothing
 */
public record Wanted(Target target, int face, OptionalDouble expectedSi) {

  /** The list in its order; a tilt is wanted on both faces, so that the meter's zero cancels. */
  public static List<Wanted> of(MeasuringList list) {
    List<Wanted> wanted = new ArrayList<>();
    for (MeasuringList.Item item : list.items()) {
      if (item.target().quantity() == MeasuredQuantity.ATTRIBUTE) {
        continue;
      }
      if (item.target().quantity() == MeasuredQuantity.TILT) {
        wanted.add(new Wanted(item.target(), 1, item.expectedSi()));
        wanted.add(new Wanted(item.target(), 2, item.expectedSi()));
      } else {
        wanted.add(new Wanted(item.target(), 0, item.expectedSi()));
      }
    }
    return List.copyOf(wanted);
  }
}
