package datumpeg.analysis.report.writing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

final class CheckWordsTest {
  @Test
  void targetsAreToldAsAPersonWouldSayThem() {
    assertEquals("corner A1", CheckWords.target("slab-square", "A1"));
    assertEquals("A1 to A4", CheckWords.target("slab-size", "A1-A4"));
    assertEquals("A3, across", CheckWords.target("column-plumb", "A3/across"));
    assertEquals("A1 to A2 at the base", CheckWords.target("frame-spacing", "A1-A2/base"));
    assertEquals("1 to 2 at the apex", CheckWords.target("frame-spacing", "1-2/apex"));
    assertEquals("frame 3 at the eave", CheckWords.target("clear-span", "3/eave"));
    assertEquals("slab.@(9.0;4.5)", CheckWords.target("slab-level-point", "slab.@(9.0;4.5)"));
  }

  @Test
  void aCheckWithoutWordsIsToldByItsName() {
    assertEquals("edge sound", CheckWords.check("edge-sound"));
  }
}
