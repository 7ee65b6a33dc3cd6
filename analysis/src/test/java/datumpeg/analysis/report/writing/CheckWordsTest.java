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
    assertEquals(
        "the slab 9 m from end 1 and 4.5 m from side A",
        CheckWords.target("slab-level-point", "slab.@(9.0;4.5)"));
    assertEquals("slab corner A1", CheckWords.target("slab-level-point", "slab.A1"));
    assertEquals("line mark A2", CheckWords.target("line-straight", "line.A2"));
    assertEquals("base A1, at the slab's end", CheckWords.target("anchor-edge", "A1/end"));
    assertEquals("base A2, against its line mark", CheckWords.target("anchor-edge", "A2/mark"));
    assertEquals("1.M1, along", CheckWords.target("mullion-plumb", "1.M1/along"));
    assertEquals("A to M1 at frame 1", CheckWords.target("mullion-spacing", "1/A-M1"));
    assertEquals("gutter A at 3.5 m from end 1", CheckWords.target("gutter-fall", "A@(3.5)"));
    assertEquals(
        "after 10 sheets on side A at the eave", CheckWords.target("sheet-run", "A/10/eave"));
    assertEquals(
        "after 10 sheets on side A, ridge less eave", CheckWords.target("sheet-run", "A/10/skew"));
    assertEquals("D1, width at the foot", CheckWords.target("opening", "D1/foot"));
    assertEquals("D1, height on the left", CheckWords.target("opening", "D1/left"));
    assertEquals("D1, left post, along", CheckWords.target("opening", "D1/left/along"));
    assertEquals("D1, difference of its diagonals", CheckWords.target("opening", "D1/diagonals"));
  }

  @Test
  void aCheckWithoutWordsIsToldByItsName() {
    assertEquals("edge sound", CheckWords.check("edge-sound"));
  }
}
