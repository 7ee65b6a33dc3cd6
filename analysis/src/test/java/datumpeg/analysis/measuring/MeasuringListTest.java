package datumpeg.analysis.measuring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.DrawnBuildings;
import datumpeg.analysis.building.PointName;
import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.building.Slab;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MeasuringListTest {
  private final SetOut shed = DrawnBuildings.shed();

  @Test
  void slabIsShotCornerByCorner() {
    assertEquals(
        List.of(
            "slab.A1-slab.A4",
            "slab.A1-slab.B4",
            "slab.A1-slab.B1",
            "slab.A4-slab.B4",
            "slab.A4-slab.B1",
            "slab.B1-slab.B4"),
        texts("slab-size", "slab-diagonals", "slab-square"));
  }

  @Test
  void levelsAreTakenAtTheJobsPointsInTheirOrder() {
    SetOut setOut = withLevels("seat.B2", "slab.A4", "slab.@(9.0;4.5)", "seat.A2");
    assertEquals(
        List.of("slab.A4", "slab.@(9.0;4.5)", "seat.B2", "seat.A2"),
        texts(setOut, "slab-level", "seat-level"));
  }

  @Test
  void withoutLevelPointsTheCornersAreLevelled() {
    assertEquals(List.of("slab.A1", "slab.A4", "slab.B4", "slab.B1"), texts("slab-level"));
    assertTrue(texts("seat-level").isEmpty());
  }

  @Test
  void columnsArePlumbedOutAlongAAndBackAlongB() {
    assertEquals(
        List.of(
            "column.A1/along",
            "column.A1/across",
            "column.A2/along",
            "column.A2/across",
            "column.A3/along",
            "column.A3/across",
            "column.A4/along",
            "column.A4/across",
            "column.B4/along",
            "column.B4/across",
            "column.B3/along",
            "column.B3/across",
            "column.B2/along",
            "column.B2/across",
            "column.B1/along",
            "column.B1/across"),
        texts("column-plumb", "portal-plumb"));
  }

  @Test
  void framesAreSpacedFromNeighbourToNeighbour() {
    assertEquals(
        List.of(
            "base.A1-base.A2",
            "base.A2-base.A3",
            "base.A3-base.A4",
            "base.B3-base.B4",
            "base.B2-base.B3",
            "base.B1-base.B2"),
        texts("frame-spacing"));
    assertEquals(texts("frame-spacing"), texts("frame-spacing/base"));
    assertEquals(
        List.of("apex.1-apex.2", "apex.2-apex.3", "apex.3-apex.4"), texts("frame-spacing/apex"));
    assertEquals("eave.A1-eave.A2", texts("frame-spacing/eave").get(0));
    assertEquals(12, texts("spacing-match").size());
  }

  @Test
  void linesAreHeldByTheirEndsAndDiagonals() {
    assertEquals(
        List.of("line.A1-line.B1", "line.A1-line.B4", "line.A4-line.B4", "line.A4-line.B1"),
        texts("line-parallel"));
    assertEquals(List.of("line.A2", "line.A3", "line.B3", "line.B2"), texts("line-straight"));
  }

  @Test
  void wallFrameIsHeldByItsFourCorners() {
    List<String> walls = texts("wall-square");
    assertEquals(12, walls.size());
    assertEquals("wall.A1/foot-wall.A4/foot", walls.get(0));
    assertTrue(walls.contains("wall.A1/foot-wall.A4/eave"), walls.toString());
  }

  @Test
  void spansAndTipsGoFrameByFrame() {
    assertEquals(
        List.of("tip.A1-tip.B1", "tip.A2-tip.B2", "tip.A3-tip.B3", "tip.A4-tip.B4"),
        texts("rafter-pair"));
    assertEquals("base.A1-base.B1", texts("clear-span").get(0));
    assertEquals("eave.A4-eave.B4", texts("clear-span/eave").get(3));
    assertEquals("base.A1/low-base.A4/high", texts("overall-length").get(0));
  }

  @Test
  void targetOfTwoChecksStandsOnceAndQuestionsLast() {
    Stage stage =
        new Stage(
            "curing",
            "curing",
            List.of("slab-size", "slab-level", "slab-square"),
            Map.of("edge-sound", "Is the edge sound?"),
            true);
    List<Target> targets = MeasuringList.of(shed, stage).targets();
    assertEquals(targets.size(), new HashSet<>(targets).size());
    assertEquals(6 + 4 + 1, targets.size());
    assertEquals("edge-sound", targets.get(10).text());
  }

  @Test
  void planSaysWhatIsExpected() {
    assertEquals(18, expected(MeasuredQuantity.DISTANCE, "slab.A1-slab.A4").orElseThrow(), 1e-12);
    assertEquals(8.572, expected(MeasuredQuantity.DISTANCE, "tip.A2-tip.B2").orElseThrow(), 1e-12);
    assertEquals(
        5.968, expected(MeasuredQuantity.DISTANCE, "base.A1-base.A2").orElseThrow(), 1e-12);
    assertEquals(OptionalDouble.of(0), expected(MeasuredQuantity.TILT, "column.A1/along"));
    assertEquals(OptionalDouble.empty(), expected(MeasuredQuantity.HEIGHT, "slab.A1"));
    assertEquals(OptionalDouble.empty(), expected(MeasuredQuantity.DISTANCE, "slab.A1-slab.Z9"));
  }

  @Test
  void everyStandardStageHasTargetsThePlanExpects() {
    for (Stage stage : Stage.STANDARD) {
      for (MeasuringList.Item item : MeasuringList.of(shed, stage).items()) {
        boolean level = item.target().quantity() == MeasuredQuantity.HEIGHT;
        assertEquals(level, item.expectedSi().isEmpty(), item.target().text());
      }
      assertTrue(!MeasuringList.of(shed, stage).items().isEmpty(), stage.id());
    }
  }

  private OptionalDouble expected(MeasuredQuantity quantity, String target) {
    return MeasuringList.expectedSi(shed, Target.parse(quantity, target));
  }

  private List<String> texts(String... checks) {
    return texts(shed, checks);
  }

  private static List<String> texts(SetOut setOut, String... checks) {
    Stage stage = new Stage("s", "s", List.of(checks), Map.of(), false);
    return MeasuringList.of(setOut, stage).targets().stream().map(Target::text).toList();
  }

  private SetOut withLevels(String... points) {
    List<PointName> names =
        List.of(points).stream().map(point -> PointName.parse(point).orElseThrow()).toList();
    return new SetOut(
        shed.building(), new Slab(shed.slab().corners(), names, List.of()), List.of());
  }
}
