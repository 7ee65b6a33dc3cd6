package datumpeg.desktop.app;

import datumpeg.desktop.form.RecordJobShelf;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Map;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.TextInputControl;
import javafx.stage.Stage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Saves a picture of the form, on a sample job whose drawing changes. */
@Tag("pictures")
class FormPictures {
  @TempDir Path folder;

  @Test
  void saveTheForm() throws Exception {
    Path pictures = Path.of(System.getProperty("datumpeg.root"), "docs", "pictures");
    Path file = folder.resolve("site.db");
    SampleJob.of("larkrise-01", file).runAll();
    Settings settings = Settings.usual().withLast(Map.of("screen", "jobs"));
    HeadlessToolkit.start();
    Stage stage = HeadlessToolkit.on(Stage::new);
    DesktopWindow window =
        HeadlessToolkit.on(
            () ->
                new DesktopWindow(
                    Words.of(Locale.ROOT),
                    ZoneOffset.UTC,
                    new SettingsFile.Loaded(settings, ""),
                    new NoSessions(),
                    new NoRows(),
                    new NoDesk(),
                    new RecordJobShelf(file, "pictures", Clock.systemUTC()),
                    kept -> {},
                    job -> {}));
    HeadlessToolkit.run(
        () -> {
          window.openOn(stage);
          window.show(ScreenPictures.read(file));
        });
    Scene scene = stage.getScene();
    HeadlessToolkit.picture(scene);
    HeadlessToolkit.run(() -> ((Button) scene.lookup("#jobs-change")).fire());
    HeadlessToolkit.until("the form", () -> scene.lookup("#form-openings-D1-from") != null);
    HeadlessToolkit.run(
        () -> {
          ((TextInputControl) scene.lookup("#form-building-span")).setText("9.1 m");
          ((TextInputControl) scene.lookup("#form-building-bays")).setText("6 m; 6 m; 5.9 m");
          scene.lookup("#form-building-span").requestFocus();
          ((TextInputControl) scene.lookup("#form-building-span")).end();
        });
    HeadlessToolkit.until(
        "the mistake", () -> scene.lookup("#form-building-bays-wrong").isVisible());
    HeadlessToolkit.save(
        HeadlessToolkit.picture(scene), pictures.resolve("window-form.png").toFile());
    HeadlessToolkit.run(stage::close);
  }
}
