package datumpeg.analysis.building;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class SetOutSheetTest {
  private final SetOutSheet sheet = SetOutSheet.of(DrawnBuildings.shed(), LengthDisplay.METRIC);

  @Test
  void endMarksAreOnTheEndLinesAndInnerMarksAtTheirFrame() {
    assertEquals(0, find("line-marks", "line.A1", "along"), 1e-12);
    assertEquals(6, find("line-marks", "line.A2", "along"), 1e-12);
    assertEquals(18, find("line-marks", "line.B4", "along"), 1e-12);
    assertEquals(8.786, find("line-marks", "line.B4", "across"), 1e-12);
  }

  @Test
  void framesRunFromTheSlabsEdgeByFace() {
    assertEquals(0, find("frames", "frame 1", "low face"), 1e-12);
    assertEquals(0.032, find("frames", "frame 1", "centre"), 1e-12);
    assertEquals(6.032, find("frames", "frame 2", "high face"), 1e-12);
    assertEquals(18, find("frames", "frame 4", "high face"), 1e-12);
  }

  @Test
  void whatIsNotThereIsNotFound() {
    assertEquals(OptionalDouble.empty(), sheet.find("frames", "frame 5", "centre"));
    assertEquals(OptionalDouble.empty(), sheet.find("openings", "D1", "from"));
  }

  @Test
  void rafterLengthIsToldWithItsPitchAndApexMove() {
    SetOut setOut =
        DrawnBuildings.gable(
            8 + 2 * 0.214, 0, List.of(6.0), DrawnBuildings.sections(OptionalDouble.of(5)));
    SetOutSheet.Table rafters = rafters(setOut);
    assertTrue(
        rafters.remarks().get(1).contains("the pitch is 36.87 deg (the drawing says 10.00 deg)"),
        rafters.remarks().toString());
    assertTrue(rafters.remarks().get(1).endsWith("the apex comes down 0.67 mm."));
  }

  @Test
  void raftersTooShortAreToldSo() {
    SetOut setOut =
        DrawnBuildings.gable(
            8 + 2 * 0.214, 0, List.of(6.0), DrawnBuildings.sections(OptionalDouble.of(3.9)));
    assertTrue(rafters(setOut).remarks().get(1).contains("cannot reach the tip distance"));
  }

  @Test
  void monoRoofHasNoRafterPairs() {
    Building gable = DrawnBuildings.shed().building();
    Building mono =
        new Building(9, 18, 3.6, 3.6, Roof.MONO, 0.05, 0, gable.baysMetres(), gable.sections());
    SetOut setOut =
        new SetOut(mono, new Slab(Slab.rectangle(mono), List.of(), List.of()), List.of());
    assertTrue(rafters(setOut).rows().isEmpty());
    assertTrue(rafters(setOut).remarks().get(0).contains("mono roof"));
  }

  @Test
  void slabOfFiveCornersHasFiveDiagonals() {
    Map<String, PlanPoint> corners = new LinkedHashMap<>();
    corners.put("A1", new PlanPoint(0, 0));
    corners.put("A4", new PlanPoint(18, 0));
    corners.put("N1", new PlanPoint(19, 4));
    corners.put("B4", new PlanPoint(18, 9));
    corners.put("B1", new PlanPoint(0, 9));
    SetOut setOut =
        new SetOut(
            DrawnBuildings.shed().building(), new Slab(corners, List.of(), List.of()), List.of());
    SetOutSheet.Table diagonals = SetOutSheet.of(setOut, LengthDisplay.METRIC).tables().get(2);
    assertEquals(5 + 2, diagonals.rows().size());
  }

  private static SetOutSheet.Table rafters(SetOut setOut) {
    return SetOutSheet.of(setOut, LengthDisplay.METRIC).tables().get(3);
  }

  private double find(String table, String row, String column) {
    return sheet.find(table, row, column).orElseThrow();
  }
}
