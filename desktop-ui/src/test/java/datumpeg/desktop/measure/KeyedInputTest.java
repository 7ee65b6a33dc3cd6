package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class KeyedInputTest {
  private final KeyedInput input = new KeyedInput();

  private List<String> type(String text) {
    List<String> commands = new ArrayList<>();
    text.chars()
        .mapToObj(letter -> Character.toString(letter))
        .forEach(letter -> input.typed(letter).ifPresent(commands::add));
    return commands;
  }

  @Test
  void aValueGoesToTheEnterKeyWithItsUnit() {
    assertEquals(List.of(), type("18.004 m"));
    assertEquals("18.004 m", input.text());
    assertEquals(Optional.of("18.004 m"), input.enter());
    assertEquals(Optional.empty(), input.enter());
  }

  @Test
  void aLetterIsACommandOnlyWhereNoValueHasBegun() {
    assertEquals(List.of("U", "S"), type("uS"));
    assertEquals(List.of(), type("29' 6 3/8\""));
    assertEquals(Optional.of("29' 6 3/8\""), input.enter());
  }

  @Test
  void signsAndDecimalMarksBeginAValue() {
    type("−0,35");
    assertEquals(Optional.of("-0,35"), input.enter());
    type(".5");
    assertEquals(Optional.of(".5"), input.enter());
  }

  @Test
  void whatIsTypedCanBeTakenBack() {
    type("12");
    input.rubOut();
    assertEquals("1", input.text());
    input.clear();
    input.rubOut();
    assertEquals("", input.text());
  }

  @Test
  void controlCharactersAndEndlessInputAreLeftOut() {
    type("1\u0007\t2");
    assertEquals("12", input.text());
    type("3".repeat(1000));
    assertEquals(60, input.text().length());
  }
}
