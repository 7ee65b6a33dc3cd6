package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Assertions;

/** One more reading never makes anything less certain, whatever errors it shares. */
final class MoreReadingsTest {
  private static final String[][] PAIRS = {
    {"A", "B"}, {"B", "C"}, {"C", "D"}, {"D", "A"}, {"A", "C"}, {"B", "D"}
  };

  @Property(tries = 150, seed = "20260302")
  void aFurtherDistanceNeverRaisesAnUncertainty(
      @ForAll @IntRange(max = 5) int pair,
      @ForAll @IntRange(min = 200, max = 10_000) int independentMicrometres,
      @ForAll @IntRange(min = -10_000, max = 10_000) int zeroMicrometres,
      @ForAll @IntRange(max = 1000) int perMillion) {
    List<MeasuredDistance> before = new ArrayList<>();
    for (String[] names : PAIRS) {
      before.add(taken(names, names[0] + names[1], 0.0015, 0.0005, 1e-4));
    }
    List<MeasuredDistance> after = new ArrayList<>(before);
    after.add(
        taken(
            PAIRS[pair],
            "again",
            1e-6 * independentMicrometres,
            1e-6 * zeroMicrometres,
            1e-6 * perMillion));
    AdjustedPlan few = plan(before);
    AdjustedPlan more = plan(after);
    for (String[] names : PAIRS) {
      double one = few.distance(names[0], names[1]).standardUncertainty();
      double other = more.distance(names[0], names[1]).standardUncertainty();
      Assertions.assertTrue(other <= one * (1 + 1e-9), names[0] + names[1]);
    }
    Assertions.assertTrue(
        more.angle("A", "B", "D").standardUncertainty()
            <= few.angle("A", "B", "D").standardUncertainty() * (1 + 1e-9));
    Assertions.assertEquals(2, more.fit().degreesOfFreedom());
  }

  private static MeasuredDistance taken(
      String[] names, String id, double independent, double zero, double perMetre) {
    PlanPoint from = Quadrilateral.CORNERS.get(names[0].charAt(0) - 'A');
    PlanPoint to = Quadrilateral.CORNERS.get(names[1].charAt(0) - 'A');
    double length = from.distanceTo(to);
    return new MeasuredDistance(
        names[0],
        names[1],
        new Observation(
            id,
            length,
            independent,
            List.of(
                new CommonPart("laser|1 zero", zero),
                new CommonPart("laser|1 scale", perMetre * length))));
  }

  private static AdjustedPlan plan(List<MeasuredDistance> taken) {
    return new DistanceNetwork("A", "B", Quadrilateral.CORNERS, taken)
        .adjust()
        .complete()
        .orElseThrow();
  }
}
