package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.Chooser;
import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.layout.FlowPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ChoiceWidthTest {
  private Stage stage;
  private FlowPane pane;

  @BeforeEach
  void open() {
    HeadlessToolkit.start();
    stage = HeadlessToolkit.on(Stage::new);
    pane = HeadlessToolkit.on(FlowPane::new);
    HeadlessToolkit.run(
        () -> {
          Chooser chooser = new Chooser("scale", "Scale", chosen -> {});
          chooser.show(
              List.of(new Choice("", "as measured"), new Choice("of", "% of what is permitted")),
              "");
          pane.getChildren().add(chooser);
          stage.setScene(new Scene(pane, 1280, 300));
          stage.show();
        });
  }

  @AfterEach
  void close() {
    HeadlessToolkit.run(stage::close);
  }

  private double widthInLetters(int pixels) {
    HeadlessToolkit.run(() -> pane.setStyle("-fx-font-size: " + pixels + "px;"));
    HeadlessToolkit.picture(stage.getScene());
    return HeadlessToolkit.on(() -> ((ComboBox<?>) pane.lookup("#scale")).getWidth());
  }

  @Test
  void listIsAsNarrowAfterLargeLettersAsBefore() {
    double before = widthInLetters(15);
    double large = widthInLetters(30);
    assertTrue(large > 1.5 * before, large + " after " + before);
    assertEquals(before, widthInLetters(15), 2);
  }
}
