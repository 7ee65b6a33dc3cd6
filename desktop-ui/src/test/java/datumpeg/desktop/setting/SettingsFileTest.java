package datumpeg.desktop.setting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.LengthDisplay;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsFileTest {
  @TempDir Path folder;

  @Test
  void whatWasSavedIsLoaded() throws IOException {
    SettingsFile file = new SettingsFile(folder.resolve("deep/er/desktop.properties"));
    Settings settings =
        Settings.usual()
            .with(Theme.SUN)
            .withText(150)
            .with(LengthDisplay.IMPERIAL)
            .withSize(1920, 1051.5)
            .withLast(Map.of("job", "larkrise-01", "record", "C:\\Höfe\\site=1.db"));
    file.save(settings);
    file.save(settings.withText(175));
    assertEquals(new SettingsFile.Loaded(settings.withText(175), ""), file.load());
    try (var left = Files.list(folder.resolve("deep/er"))) {
      assertEquals(1, left.count(), "a half-written file was left behind");
    }
  }

  @Test
  void withoutAFileTheUsualSettingsHold() {
    assertEquals(
        new SettingsFile.Loaded(Settings.usual(), ""),
        new SettingsFile(folder.resolve("none")).load());
  }

  @Test
  void brokenFileIsSaidAndIgnoredAndLeftAsItIs() throws IOException {
    for (String broken :
        List.of(
            "theme=purple",
            "text=large",
            "text=1000",
            "units=cubits",
            "width=NaN",
            "theme=\\u12zz")) {
      Path path = folder.resolve("broken.properties");
      Files.writeString(path, broken);
      SettingsFile.Loaded loaded = new SettingsFile(path).load();
      assertEquals(Settings.usual(), loaded.settings(), broken);
      assertTrue(loaded.trouble().startsWith(path + ": "), loaded.trouble());
      assertEquals(broken, Files.readString(path));
    }
    Path folderInstead = Files.createDirectory(folder.resolve("folder.properties"));
    assertTrue(
        new SettingsFile(folderInstead).load().trouble().contains("folder.properties"),
        "a folder in its place is not said");
  }

  @Test
  void brokenFileNamesWhatWasExpected() throws IOException {
    Path path = Files.writeString(folder.resolve("s.properties"), "theme=purple");
    assertTrue(
        new SettingsFile(path)
            .load()
            .trouble()
            .endsWith("theme is purple; expected one of dark, light, sun"));
  }
}
