package datumpeg.desktop.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.desktop.app.HeadlessToolkit;
import datumpeg.desktop.measure.SessionWish.LinkWish;
import datumpeg.desktop.measure.Sessions.Port;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Locale;
import javafx.scene.Scene;
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
                    Words.of(Locale.ROOT), List.of(new LinkWish(FIRST.address(), PROFILE))));
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
}
