package datumpeg.bridge.mistake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NearestTest {
  private static final List<String> KNOWN = List.of("span", "length", "eave_height", "pitch");

  @Test
  void oneLetterWrongDroppedAddedOrSwappedIsFound() {
    for (String word : List.of("spam", "spn", "spann", "sapn")) {
      assertEquals(Optional.of("span"), Nearest.of(word, KNOWN), word);
    }
  }

  @Test
  void caseAndTheKindOfDashDoNotCount() {
    assertEquals(Optional.of("eave_height"), Nearest.of("Eave-Height", KNOWN));
    assertEquals(Optional.of("eave_height"), Nearest.of("eave height", KNOWN));
  }

  @Test
  void wordUnlikeAnyIsNotGuessed() {
    assertEquals(Optional.empty(), Nearest.of("bays", KNOWN));
    assertEquals("known are span, length, eave_height, pitch", Nearest.hint("bays", KNOWN));
  }

  @Test
  void nothingKnownOrNothingWrittenGivesNoGuess() {
    assertEquals(Optional.empty(), Nearest.of("span", List.of()));
    assertEquals("none is known", Nearest.hint("span", List.of()));
    assertEquals(Optional.empty(), Nearest.of("", KNOWN));
  }
}
