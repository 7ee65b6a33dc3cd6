package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.Chooser;
import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ListCell;
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

  /** While outcomes are still being worked out, names come and go before the chosen one. */
  @Test
  void whatIsChosenIsWhatIsShownWhateverComesAndGoesBeforeIt() {
    Choice all = new Choice("", "all");
    Choice amber = new Choice("Amber", "Amber");
    Choice blue = new Choice("Blue", "Blue");
    Chooser chooser = (Chooser) HeadlessToolkit.on(() -> pane.getChildren().get(0));
    for (List<Choice> choices :
        List.of(List.of(all, amber, blue), List.of(all, blue), List.of(all, amber, blue))) {
      HeadlessToolkit.run(() -> chooser.show(choices, "Blue"));
      HeadlessToolkit.picture(stage.getScene());
      assertEquals("Blue", HeadlessToolkit.on(this::written));
    }
  }

  private String written() {
    ComboBox<?> box = (ComboBox<?>) pane.lookup("#scale");
    return box.getChildrenUnmodifiable().stream()
        .filter(node -> node instanceof ListCell)
        .map(node -> ((ListCell<?>) node).getText())
        .findFirst()
        .orElse("");
  }
}
