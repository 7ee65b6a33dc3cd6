package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class TonesTest {
  @Test
  void aToneHasItsPitchAndBeginsAndEndsSilent() {
    byte[] tone = Tones.tone(440, 0.1);
    assertEquals(2205, tone.length);
    assertEquals(0, tone[0]);
    assertEquals(0, tone[tone.length - 1], 2);
    int crossings = 0;
    for (int i = 1; i < tone.length; i++) {
      crossings += (tone[i - 1] < 0) != (tone[i] < 0) ? 1 : 0;
    }
    assertEquals(2 * 440 * 0.1, crossings, 3);
  }

  @Test
  void aMachineWithoutSoundStaysSilent() {
    Tones tones = new Tones();
    assertDoesNotThrow(tones::accepted);
    assertDoesNotThrow(tones::held);
  }
}
