package datumpeg.desktop.app;

import datumpeg.desktop.form.RecordJobShelf;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.text.Words;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.TitledPane;
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
    save(scene, pictures.resolve("window-form.png"));
    Path others =
        Files.createDirectories(
            Path.of(System.getProperty("datumpeg.root"), "desktop-ui", "target", "pictures"));
    for (Look look : Look.OTHERS) {
      HeadlessToolkit.run(() -> look.of(stage, window));
      save(scene, others.resolve("window-form" + look.suffix() + ".png"));
    }
    HeadlessToolkit.run(() -> Look.USUAL.of(stage, window));
    typeDetails(scene);
    save(scene, pictures.resolve("window-form-details.png"));
    for (Look look : Look.OTHERS) {
      HeadlessToolkit.run(() -> look.of(stage, window));
      scrollTo(scene, "outline", "slab-corners-B4-2");
      save(scene, others.resolve("window-form-details" + look.suffix() + ".png"));
    }
    HeadlessToolkit.run(() -> Look.USUAL.of(stage, window));
    typeLimits(scene);
    save(scene, pictures.resolve("window-form-limits.png"));
    for (Look look : Look.OTHERS) {
      HeadlessToolkit.run(() -> look.of(stage, window));
      scrollTo(scene, "tolerances", "tolerances-slab-level");
      save(scene, others.resolve("window-form-limits" + look.suffix() + ".png"));
    }
    HeadlessToolkit.run(stage::close);
  }

  /** Limits of our own invention, one of them not yet right. */
  private static void typeLimits(Scene scene) {
    HeadlessToolkit.run(
        () -> ((TitledPane) scene.lookup("#form-group-tolerances")).setExpanded(true));
    type(scene, "tolerances-slab-size", "up to 12 m: 8, beyond: 12");
    type(scene, "tolerances-slab-diagonals", "lower -5, upper 10");
    type(scene, "tolerances-slab-level", "at 1 m: 3, at 4 m: 9, to whole");
    HeadlessToolkit.until(
        "the mistake", () -> scene.lookup("#form-tolerances-slab-level-wrong").isVisible());
    scrollTo(scene, "tolerances", "tolerances-slab-level");
  }

  private static void save(Scene scene, Path file) {
    HeadlessToolkit.save(HeadlessToolkit.picture(scene), file.toFile());
  }

  /** An outline of its own, end posts, a gutter, anchors and a line of flatness, all invented. */
  private static void typeDetails(Scene scene) {
    type(scene, "building-span", "9 m");
    type(scene, "building-bays", "6 m; 6 m; 6 m");
    for (String group : List.of("outline", "mullions", "anchors", "gutterB", "flatness")) {
      HeadlessToolkit.run(
          () -> ((TitledPane) scene.lookup("#form-group-" + group)).setExpanded(true));
    }
    HeadlessToolkit.run(() -> ((Button) scene.lookup("#form-table-slab-corners-rectangle")).fire());
    HeadlessToolkit.until("the rows", () -> scene.lookup("#form-slab-corners-B4-1") != null);
    type(scene, "mullions-end_1", "1.5 m; 6.5 m");
    type(scene, "mullions-end_n", "4.5 m");
    type(scene, "anchors-edge_distance", "75");
    type(scene, "gutters-B-outlet", "18 m");
    type(scene, "gutters-B-fall", "1:400");
    type(scene, "table-flatness-lines-name", "L1");
    HeadlessToolkit.run(() -> ((Button) scene.lookup("#form-table-flatness-lines-add")).fire());
    HeadlessToolkit.until("the line", () -> scene.lookup("#form-flatness-lines-L1-1-1") != null);
    type(scene, "flatness-lines-L1-1-1", "5 m");
    type(scene, "flatness-lines-L1-1-2", "2 m");
    type(scene, "flatness-lines-L1-2-1", "16 m");
    type(scene, "flatness-lines-L1-2-2", "7 m");
    type(scene, "slab-corners-B4-2", "9.3 m");
    HeadlessToolkit.until(
        "the outline",
        () -> scene.lookup("#form-plan").getAccessibleText().contains("B4 18000 mm, 9300 mm"));
    scrollTo(scene, "outline", "slab-corners-B4-2");
  }

  private static void type(Scene scene, String field, String text) {
    HeadlessToolkit.run(() -> ((TextInputControl) scene.lookup("#form-" + field)).setText(text));
  }

  private static void scrollTo(Scene scene, String group, String field) {
    HeadlessToolkit.picture(scene);
    HeadlessToolkit.run(
        () -> {
          Node wanted = scene.lookup("#form-group-" + group);
          Node at = wanted;
          while (at.getParent() != null && !(at instanceof ScrollPane)) {
            at = at.getParent();
          }
          ScrollPane scroll = (ScrollPane) at;
          Bounds content = scroll.getContent().getBoundsInLocal();
          double above =
              scroll
                  .getContent()
                  .sceneToLocal(wanted.localToScene(wanted.getBoundsInLocal()))
                  .getMinY();
          scroll.setVvalue(above / (content.getHeight() - scroll.getViewportBounds().getHeight()));
          scene.lookup("#form-" + field).requestFocus();
          ((TextInputControl) scene.lookup("#form-" + field)).end();
        });
  }
}
