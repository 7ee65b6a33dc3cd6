package datumpeg.analysis.simulate;

import datumpeg.analysis.measuring.Target;
import java.util.OptionalDouble;

/**
 * One reading to be taken.
 *
 * @param meter which of the session's meters takes it
 * @param face 1 or 2 for a tilt taken on two faces, else 0
 * @param upMetres height of a tilt meter above the base; empty = mid-height
 * @param round of the target
 * @param slip what a person's blunder adds to the value shown, in metres or radians; 0 = none
 */
public record Sighting(
    Target target, String meter, int face, OptionalDouble upMetres, int round, double slip) {

  /** The first round of a target without faces, no slip. */
  public static Sighting of(Target target, String meter) {
    return new Sighting(target, meter, 0, OptionalDouble.empty(), 1, 0);
  }

  public Sighting onFace(int number) {
    return new Sighting(target, meter, number, upMetres, round, slip);
  }

  public Sighting at(double metresAboveBase) {
    return new Sighting(target, meter, face, OptionalDouble.of(metresAboveBase), round, slip);
  }

  public Sighting inRound(int number) {
    return new Sighting(target, meter, face, upMetres, number, slip);
  }

  public Sighting withSlip(double added) {
    return new Sighting(target, meter, face, upMetres, round, added);
  }
}
