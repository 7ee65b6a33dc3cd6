package datumpeg.analysis.building;

import java.util.List;
import java.util.OptionalDouble;

/** Plans for tests, in metres. */
public final class DrawnBuildings {
  private DrawnBuildings() {}

  /** Columns 150 deep and 64 wide, girts 64, rafters 150 deep cut square. */
  public static Sections sections(OptionalDouble rafterLengthMetres) {
    return sections(0.064, RafterEnd.SQUARE, rafterLengthMetres);
  }

  static Sections sections(
      double columnWidthMetres, RafterEnd rafterEnd, OptionalDouble rafterLengthMetres) {
    OptionalDouble none = OptionalDouble.empty();
    return new Sections(
        0.150,
        columnWidthMetres,
        0.064,
        0.064,
        0.150,
        Girts.OUTSIDE,
        0,
        0,
        rafterEnd,
        rafterLengthMetres,
        none,
        none,
        none,
        none);
  }

  /** A gable of 10 deg, 3.6 m to the eave, on a rectangular slab. */
  public static SetOut gable(
      double spanMetres, double endLineOffsetMetres, List<Double> bays, Sections sections) {
    double length = bays.stream().mapToDouble(Double::doubleValue).sum() + 2 * endLineOffsetMetres;
    Building building =
        new Building(
            spanMetres,
            length,
            3.6,
            3.6,
            Roof.GABLE,
            StrictMath.toRadians(10),
            endLineOffsetMetres,
            bays,
            sections);
    return new SetOut(
        building, new Slab(Slab.rectangle(building), List.of(), List.of()), List.of());
  }

  /** 9 m × 18 m in three bays of 6 m. */
  public static SetOut shed() {
    return gable(9, 0, List.of(6.0, 6.0, 6.0), sections(OptionalDouble.empty()));
  }
}
