package datumpeg.analysis.simulate;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.building.Girts;
import datumpeg.analysis.building.GridMark;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.RafterEnd;
import datumpeg.analysis.building.Roof;
import datumpeg.analysis.building.Sections;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Slab;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import java.util.List;
import java.util.OptionalDouble;

/** The worked example of room building: 9 m × 18 m, three bays, columns 3.6 m high. */
final class ExamplePlan {
  private ExamplePlan() {}

  static SetOut setOut() {
    Sections sections =
        new Sections(
            0.150,
            0.064,
            0.064,
            0.064,
            0.150,
            Girts.OUTSIDE,
            0,
            0,
            RafterEnd.SQUARE,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    Building building =
        new Building(
            9,
            18,
            3.6,
            3.6,
            Roof.GABLE,
            StrictMath.toRadians(10),
            0,
            List.of(6.0, 6.0, 6.0),
            sections);
    return new SetOut(
        building, new Slab(Slab.rectangle(building), List.of(), List.of()), List.of());
  }

  static PointName point(String text) {
    return PointName.parse(text).orElseThrow();
  }

  static GridMark mark(String text) {
    return GridMark.parse(text).orElseThrow();
  }

  static Target target(MeasuredQuantity quantity, String text) {
    return Target.parse(quantity, text);
  }
}
