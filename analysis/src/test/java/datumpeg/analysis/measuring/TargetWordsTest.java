package datumpeg.analysis.measuring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.reduce.InventedJob;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TargetWordsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "DISTANCE | slab.A1-slab.B4 | the distance from slab corner A1 to slab corner B4",
        "DISTANCE | base.B1/low-base.B3/low | the distance from the foot of column B1 to the foot of column B3 (both on the face toward end 1)",
        "DISTANCE | base.B1/low-base.B3/high | the distance from the foot of column B1 on its face toward end 1 to the foot of column B3 on its face toward end n",
        "DISTANCE | eave.A1-apex.2 | the distance from column A1 at the eave to the apex of frame 2",
        "DISTANCE | anchor.A1-edge.A1/end | the distance from the anchors of base A1 to the slab's end edge beside base A1",
        "DISTANCE | anchor.A2-edge.A2 | the distance from the anchors of base A2 to the slab's edge beside base A2",
        "DISTANCE | wall.A1/foot-wall.A4/eave | the distance from wall frame corner A1 at the foot to wall frame corner A4 at the eave",
        "DISTANCE | opening.D1/left-foot-opening.D1/right-head | the distance from the left foot of opening D1 to the right head of opening D1",
        "DISTANCE | tip.A2/bottom-tip.B2/bottom | the distance from the bottom corner of rafter tip A2 to the bottom corner of rafter tip B2",
        "DISTANCE | sheet.A1/eave-sheet.A11/eave | the distance from sheet A1 at the eave to sheet A11 at the eave",
        "HEIGHT | slab.@(9.0;4.5) | the level of the slab 9 m from end 1 and 4.5 m from side A",
        "HEIGHT | seat.A3 | the level of the slab under base A3",
        "HEIGHT | gutter.A@(3.5) | the level of gutter A at 3.5 m from end 1",
        "HEIGHT | profile.L1@(0.6) | the level of profile L1 at 0.6 m from its start",
        "STAFF | slab.A1 | the staff on slab corner A1",
        "OFFSET | line.A2 | the offset of line mark A2 from the string line",
        "OFFSET | edge.A@(6) | the offset of the slab's edge on side A at 6 m from end 1 from the string line",
        "OFFSET | slab.@(3;3) | the gap under the straightedge on the slab 3 m from end 1 and 3 m from side A",
        "TILT | column.A3/across | the tilt of column A3 across the building",
        "TILT | opening.D1/left/along | the tilt of the left post of opening D1 along the building",
        "TILT | mullion.1.M1/along | the tilt of mullion 1.M1 along the building",
        "PLUMB_OFFSET | eave.A3/across | the offset of column A3 at the eave from the plumb line across the building",
        "ATTRIBUTE | edge-sound | the answer to edge-sound",
      })
  void aTargetIsSaidInWords(MeasuredQuantity quantity, String target, String words) {
    assertEquals(words, TargetWords.of(Target.parse(quantity, target)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "DISTANCE | slab.A1-slab.B4 | 0 | Measure from slab corner A1 to slab corner B4",
        "HEIGHT | slab.A1 | 0 | Take the level of slab corner A1",
        "STAFF | seat.A2 | 0 | Read the staff on the slab under base A2",
        "OFFSET | base.A3 | 0 | Measure from the string line to the foot of column A3, less its stand-off",
        "OFFSET | slab.@(3;3) | 0 | Read the gap under the straightedge on the slab 3 m from end 1 and 3 m from side A",
        "TILT | column.A3/across | 1 | Hold the tilt meter on column A3, across the building, face 1",
        "TILT | column.A3/along | 2 | Hold the tilt meter on column A3, along the building, face 2: turn the meter end for end",
        "PLUMB_OFFSET | base.A3/along | 0 | Measure from the plumb line to the foot of column A3, along the building",
        "ATTRIBUTE | edge-sound | 0 | Answer: Is the edge sound?",
      })
  void whatToDoIsOneLine(MeasuredQuantity quantity, String target, int face, String words) {
    assertEquals(
        words, TargetWords.instruction(Target.parse(quantity, target), face, "Is the edge sound?"));
  }

  @Test
  void manyTargetsAreSaidKindByKind() {
    List<Target> targets =
        List.of(
            Target.parse(MeasuredQuantity.DISTANCE, "slab.A1-slab.A4"),
            Target.parse(MeasuredQuantity.HEIGHT, "slab.A1"),
            Target.parse(MeasuredQuantity.DISTANCE, "slab.A1-slab.B4"),
            Target.parse(MeasuredQuantity.HEIGHT, "slab.A1"),
            Target.parse(MeasuredQuantity.HEIGHT, "seat.A2"),
            Target.parse(MeasuredQuantity.HEIGHT, "seat.A3"),
            Target.parse(MeasuredQuantity.TILT, "column.A3/across"));
    assertEquals(
        "the distances between slab corners A1 and A4, A1 and B4; the level of slab corner A1; the"
            + " levels of the slab under bases A2, A3; the tilt of column A3 across the building",
        TargetWords.all(targets));
    assertEquals(
        "the distances between the feet of columns A1 and A2, A2 and A3; the tilts along the building"
            + " of columns A1, A2; the distances from column A1 at the eave to the apex of frame 2, from"
            + " column A2 at the eave to the apex of frame 1",
        TargetWords.all(
            List.of(
                Target.parse(MeasuredQuantity.DISTANCE, "base.A1-base.A2"),
                Target.parse(MeasuredQuantity.DISTANCE, "base.A2-base.A3"),
                Target.parse(MeasuredQuantity.TILT, "column.A1/along"),
                Target.parse(MeasuredQuantity.TILT, "column.A2/along"),
                Target.parse(MeasuredQuantity.DISTANCE, "eave.A1-apex.2"),
                Target.parse(MeasuredQuantity.DISTANCE, "eave.A2-apex.1"))));
    assertEquals(
        "the distances between wall frame corners A1 at the foot and A4 at the eave, A1 at the eave and"
            + " A4 at the foot; the distances between the corners of opening D1, left foot and right"
            + " head, left head and right foot; the distances between the feet of columns B1 on its"
            + " face toward end 1 and B2 on its face toward end 1, B2 and B3",
        TargetWords.all(
            List.of(
                Target.parse(MeasuredQuantity.DISTANCE, "wall.A1/foot-wall.A4/eave"),
                Target.parse(MeasuredQuantity.DISTANCE, "wall.A1/eave-wall.A4/foot"),
                Target.parse(
                    MeasuredQuantity.DISTANCE, "opening.D1/left-foot-opening.D1/right-head"),
                Target.parse(
                    MeasuredQuantity.DISTANCE, "opening.D1/right-foot-opening.D1/left-head"),
                Target.parse(MeasuredQuantity.DISTANCE, "base.B1/low-base.B2/low"),
                Target.parse(MeasuredQuantity.DISTANCE, "base.B2-base.B3"))));
    assertEquals("", TargetWords.all(List.of()));
  }

  @Test
  void whatANetworkCallsItsReadingsIsADistanceOrALevel() {
    assertEquals(
        "the distance from the foot of column A1 to the foot of column A2",
        TargetWords.named("base.A1-base.A2"));
    assertEquals("the level of slab corner A1", TargetWords.named("slab.A1"));
    assertEquals("r001", TargetWords.named("r001"));
    assertEquals("slab corner A1", TargetWords.pointNamed("slab.A1"));
    assertEquals("set-up 2", TargetWords.pointNamed("set-up 2"));
  }

  @Test
  void aSentenceOfANetworkNamesItsPointsInWords() {
    assertEquals(
        "1 distances do not fix the right head of opening D1 against slab corner A1",
        TargetWords.inSentence("1 distances do not fix opening.D1/right-head against slab.A1"));
    assertEquals(
        "no set-up connects the slab 9 m from end 1 and 4.5 m from side A, slab corner B1 with the"
            + " other points",
        TargetWords.inSentence(
            "no set-up connects slab.@(9.0;4.5), slab.B1 with the other points"));
    assertEquals("nothing to name", TargetWords.inSentence("nothing to name"));
  }

  /** No target of any stage is told by the name under which it is stored. */
  @Test
  void everyTargetOfEveryStageHasWords() {
    for (Stage stage : Stage.STANDARD) {
      for (Target target : MeasuringList.of(new InventedJob().build().setOut(), stage).targets()) {
        String words = TargetWords.of(target);
        assertFalse(words.contains(target.first().text()), words);
        assertTrue(words.contains(target.first().place()) || words.contains(" m from"), words);
      }
    }
  }
}
