package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class WrappedTest {
  @Test
  void linesBreakAtSpacesAndKeepToTheWidth() {
    assertEquals(List.of("- one two", "  three"), Wrapped.lines("- ", "  ", "one two three", 9));
  }

  @Test
  void aWordLongerThanTheWidthHasALineOfItsOwn() {
    assertEquals(List.of("- a", "  enormous", "  b"), Wrapped.lines("- ", "  ", "a enormous b", 5));
  }

  @Test
  void anEmptyTextIsOneLine() {
    assertEquals(List.of("- "), Wrapped.lines("- ", "  ", "", 10));
  }
}
