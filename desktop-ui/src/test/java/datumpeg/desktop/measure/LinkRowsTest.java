package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.measure.MeasurePage.Listening;
import datumpeg.desktop.measure.SessionWish.LinkWish;
import datumpeg.desktop.measure.Sessions.Port;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;

class LinkRowsTest {
  private static final Port FIRST = new Port("serial:/dev/first", "invented");
  private static final Port SECOND = new Port("serial:/dev/second", "invented");
  private static final String PROFILE = "general-text-line";

  /** Meters are looked for in the background: what they are must not take away what was typed. */
  @Test
  void anAddressBeingTypedStaysWhenOtherMetersAreOffered() {
    HeadlessToolkit.start();
    Stage stage = HeadlessToolkit.on(Stage::new);
    LinkRows rows =
        HeadlessToolkit.on(
            () ->
                new LinkRows(
                    Words.of(Locale.ROOT),
                    List.of(new LinkWish(FIRST.address(), PROFILE)),
                    () -> {}));
    HeadlessToolkit.run(
        () -> {
          rows.offer(List.of(FIRST, SECOND), List.of(PROFILE));
          stage.setScene(new Scene(rows));
          stage.show();
        });
    HeadlessToolkit.run(
        () -> {
          ComboBox<?> link = (ComboBox<?>) rows.lookup("#measure-link-1");
          link.getEditor().setText("serial:/dev/typed");
        });
    HeadlessToolkit.run(() -> rows.offer(List.of(SECOND), List.of(PROFILE)));
    HeadlessToolkit.run(() -> rows.offer(List.of(), List.of(PROFILE)));
    HeadlessToolkit.run(stage::close);
    assertEquals(
        List.of(new LinkWish("serial:/dev/typed", PROFILE)), HeadlessToolkit.on(rows::wishes));
  }

  @Test
  void aMeterThatWasHeardBelongsToTheSessionOnlyWhenItIsTaken() {
    HeadlessToolkit.start();
    Port heard = new Port("ble:C0:FF:EE:00:00:01", "Shed Rule -58 dBm");
    Port other = new Port("ble:C0:FF:EE:00:00:02", "Neighbour");
    LinkRows rows =
        HeadlessToolkit.on(() -> new LinkRows(Words.of(Locale.ROOT), List.of(), () -> {}));
    HeadlessToolkit.run(() -> rows.show(new Listening(true, 0.5, "", List.of(heard, other))));
    assertEquals(List.of(), HeadlessToolkit.on(rows::wishes));
    List<Node> buttons =
        HeadlessToolkit.on(
            () -> HeadlessToolkit.find(rows, node -> node.getStyleClass().contains("heard-meter")));
    assertEquals(2, buttons.size());
    HeadlessToolkit.run(() -> ((Button) buttons.get(0)).fire());
    assertEquals(
        List.of(new LinkWish(heard.address(), "self-describing")),
        HeadlessToolkit.on(rows::wishes));
    assertTrue(buttons.get(0).isDisabled(), "it could be taken twice");
    assertFalse(buttons.get(1).isDisabled());
  }
}
