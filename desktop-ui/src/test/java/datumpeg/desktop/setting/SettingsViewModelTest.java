package datumpeg.desktop.setting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.desktop.text.Words;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class SettingsViewModelTest {
  private final Words words = Words.of(Locale.ROOT);

  @Test
  void textGrowsAndShrinksWithinItsBounds() {
    SettingsViewModel model = new SettingsViewModel(words, Settings.usual(), "");
    model.largerText();
    assertEquals(110, model.now().textPercent());
    model.text(200);
    model.largerText();
    assertEquals(200, model.now().textPercent());
    model.text(80);
    model.smallerText();
    assertEquals(80, model.now().textPercent());
  }

  @Test
  void unitsHoldForEveryTextThatFollows() {
    SettingsViewModel model =
        new SettingsViewModel(words, Settings.usual().with(LengthDisplay.IMPERIAL), "");
    assertEquals("28' 1 1/2\"", words.figures().size(8.5725));
    assertEquals("Put 1\" (25.4 mm) under base A3.", words.told("Put 25.4 mm under base A3."));
    model.units(LengthDisplay.METRIC);
    assertEquals("8572.5 mm", words.figures().size(8.5725));
    assertEquals("Put 25.4 mm under base A3.", words.told("Put 25.4 mm under base A3."));
  }

  @Test
  void brokenSettingsAreSaid() {
    SettingsViewModel model = new SettingsViewModel(words, Settings.usual(), "x: theme is purple");
    assertTrue(model.trouble().startsWith("The settings could not be used"), model.trouble());
    assertEquals("", new SettingsViewModel(words, Settings.usual(), "").trouble());
  }
}
