package datumpeg.analysis.building;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.detail.Anchors;
import datumpeg.analysis.detail.Details;
import datumpeg.analysis.detail.Gutter;
import datumpeg.analysis.detail.Mullion;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.InventedJob;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class DetailSheetTest {
  private static SetOutSheet sheet(Details details) {
    InventedJob job = new InventedJob();
    job.details = details;
    return SetOutSheet.of(job.build().setOut(), LengthDisplay.METRIC);
  }

  private static double find(SetOutSheet sheet, String table, String row, String column) {
    return sheet.find(table, row, column).orElseThrow();
  }

  /** 18 m of gutter at 1 m are 19 brackets; 18 m of 1:500 fall 36 mm (both by hand). */
  @Test
  void bracketsStandAboveTheOutletByTheFall() {
    SetOutSheet sheet = sheet(Details.NONE.withGutters(Map.of('A', new Gutter(18, 0.002, 1))));
    assertEquals(0.036, find(sheet, "gutter-A", "bracket 1", "above outlet"), 1e-12);
    assertEquals(0, find(sheet, "gutter-A", "bracket 19", "above outlet"), 1e-12);
    assertEquals(18, find(sheet, "gutter-A", "bracket 19", "along"), 1e-12);
    assertTrue(sheet.find("gutter-A", "bracket 20", "along").isEmpty());
  }

  /** 12 m of gutter fall 24 mm at 1:500 and 60 mm at 1:200 (by hand). */
  @Test
  void aSteeperFallLiftsTheFarBracketMore() {
    SetOutSheet gentle = sheet(Details.NONE.withGutters(Map.of('A', new Gutter(12, 1.0 / 500, 1))));
    SetOutSheet steep = sheet(Details.NONE.withGutters(Map.of('A', new Gutter(12, 1.0 / 200, 1))));
    assertEquals(0.024, find(gentle, "gutter-A", "bracket 1", "above outlet"), 1e-12);
    assertEquals(0.060, find(steep, "gutter-A", "bracket 1", "above outlet"), 1e-12);
  }

  /** A base's centre is 64 + 150/2 = 139 mm in; anchors 80 mm apart: 99 mm to the edge. */
  @Test
  void anchorsAreTheSameOnBothSides() {
    SetOutSheet sheet = sheet(Details.NONE.withAnchors(new Anchors(0.075, 0.080, 0)));
    for (String place : List.of("anchor.A2", "anchor.B2")) {
      assertEquals(0.099, find(sheet, "anchors", place, "outermost to side edge"), 1e-12);
      assertEquals(6, find(sheet, "anchors", place, "along"), 1e-12);
    }
    assertEquals(0.139, find(sheet, "anchors", "anchor.A2", "across"), 1e-12);
    assertEquals(8.861, find(sheet, "anchors", "anchor.B2", "across"), 1e-12);
  }

  @Test
  void postsStandInByTheEndGirt() {
    SetOutSheet sheet =
        sheet(Details.NONE.withMullions(List.of(new Mullion(1, "M1", 3, OptionalDouble.of(4)))));
    assertEquals(0.064, find(sheet, "mullions", "mullion.1.M1", "along"), 1e-12);
    assertEquals(3, find(sheet, "mullions", "mullion.1.M1", "across"), 1e-12);
    assertEquals(4, find(sheet, "mullions", "mullion.1.M1", "height"), 1e-12);
  }

  @Test
  void aPlanWithoutDetailsHasNoSuchTable() {
    assertFalse(
        sheet(Details.NONE).tables().stream()
            .anyMatch(table -> List.of("anchors", "mullions").contains(table.key())));
  }
}
