package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class CommonWordsTest {
  @Test
  void wholeWordsThatAllBeginWithAreLeftOut() {
    assertEquals(
        List.of("A1 to B4", "A12 to B1"),
        CommonWords.without(List.of("the distance from A1 to B4", "the distance from A12 to B1")));
  }

  @Test
  void whatComesTwiceInAllIsLeftOutTheSecondTimeToo() {
    assertEquals(
        List.of("A1 to B4", "A4 to B1"),
        CommonWords.without(
            List.of(
                "the distance from slab corner A1 to slab corner B4",
                "the distance from slab corner A4 to slab corner B1")));
    assertEquals(
        List.of("A1 to slab corner B4", "A4 to eave A1"),
        CommonWords.without(
            List.of("from slab corner A1 to slab corner B4", "from slab corner A4 to eave A1")));
  }

  @Test
  void textsWithNothingInCommonStay() {
    assertEquals(
        List.of("a level", "the tilt"), CommonWords.without(List.of("a level", "the tilt")));
    assertEquals(List.of(), CommonWords.without(List.of()));
    assertEquals(List.of("one alone"), CommonWords.without(List.of("one alone")));
  }

  @Test
  void noneBecomesEmpty() {
    assertEquals(List.of("B1", "B1"), CommonWords.without(List.of("base B1", "base B1")));
    assertEquals(List.of("base ", "base B1"), CommonWords.without(List.of("base ", "base B1")));
  }
}
