package datumpeg.desktop.measure;

import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Spinner;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import org.jspecify.annotations.Nullable;

/**
 * Brings what a meter types to the session while another screen is shown.
 *
 * <p>A digit, a sign before one, or a decimal mark begins a value whatever has the focus, and Enter
 * ends it. Only a text field that a person went to keeps its keys: one that was clicked or touched,
 * reached by Tab, or typed into with anything that begins no value. A field that a screen put the
 * focus on by itself does not. Letters are commands on the screen Measure only.
 */
public final class KeysElsewhere {
  private static final String SIGNS = "+-−";

  private final MeasureViewModel model;
  private final Node window;
  private @Nullable Node ofAPerson;
  private boolean tabbed;
  private String sign = "";

  private KeysElsewhere(MeasureViewModel model, Node window) {
    this.model = model;
    this.window = window;
  }

  /**
   * Listens to all keys of a window.
   *
   * @param window its root
   */
  public static void of(MeasureViewModel model, Node window) {
    KeysElsewhere keys = new KeysElsewhere(model, window);
    window.addEventFilter(MouseEvent.MOUSE_PRESSED, keys::clicked);
    window.addEventFilter(KeyEvent.KEY_PRESSED, keys::pressed);
    window.addEventFilter(KeyEvent.KEY_TYPED, keys::typed);
    if (window.getScene() != null) {
      keys.follow(window.getScene());
    }
    window.sceneProperty().addListener((property, before, scene) -> keys.follow(scene));
  }

  private void follow(Scene scene) {
    scene.focusOwnerProperty().addListener((focus, was, owner) -> focusMoved(owner));
  }

  /** What a person left is his no more. */
  private void focusMoved(@Nullable Node owner) {
    if (owner == null || !owner.equals(ofAPerson)) {
      ofAPerson = null;
    }
  }

  private boolean isOn() {
    return model.isRunning() && !model.isShown();
  }

  private void clicked(MouseEvent event) {
    tabbed = false;
    ofAPerson = null;
    for (Node at = event.getTarget() instanceof Node node ? node : null;
        at != null;
        at = at.getParent()) {
      if (isText(at)) {
        ofAPerson = at;
      }
    }
  }

  private void pressed(KeyEvent event) {
    boolean tab = event.getCode() == KeyCode.TAB;
    if (tab || !isOn() || MeasureView.isOfTheWindow(event)) {
      tabbed |= tab;
      return;
    }
    if (isKept() || !model.session().hasTyped()) {
      return;
    }
    switch (event.getCode()) {
      case ENTER -> model.session().enter();
      case BACK_SPACE -> model.session().rubOut();
      case ESCAPE -> model.session().escape();
      default -> {
        return;
      }
    }
    event.consume();
  }

  private void typed(KeyEvent event) {
    String character = event.getCharacter();
    if (!isOn() || MeasureView.isOfTheWindow(event) || isControl(character) || isKept()) {
      sign = "";
      return;
    }
    boolean begun = model.session().hasTyped();
    if (!begun && SIGNS.contains(character)) {
      // Alone it may be a key of the screen, such as the one that makes a chart larger.
      sign = character;
      return;
    }
    if (begun || "0123456789.,".contains(character)) {
      if (!sign.isEmpty()) {
        model.session().typed(sign);
      }
      model.session().typed(character);
      event.consume();
    } else {
      ofAPerson = focused().filter(KeysElsewhere::isText).orElse(null);
    }
    sign = "";
  }

  private static boolean isControl(String character) {
    return character.length() != 1 || Character.isISOControl(character.charAt(0));
  }

  /** Whether keys are for a text field that a person went to. */
  private boolean isKept() {
    Node now = focused().orElse(null);
    if (tabbed && now != null && isText(now)) {
      ofAPerson = now;
    }
    tabbed = false;
    return now != null && now.equals(ofAPerson);
  }

  private Optional<Node> focused() {
    return Optional.ofNullable(window.getScene()).map(scene -> scene.getFocusOwner());
  }

  private static boolean isText(Node node) {
    return (node instanceof TextInputControl text && text.isEditable())
        || (node instanceof ComboBoxBase<?> box && box.isEditable())
        || (node instanceof Spinner<?> spinner && spinner.isEditable());
  }
}
