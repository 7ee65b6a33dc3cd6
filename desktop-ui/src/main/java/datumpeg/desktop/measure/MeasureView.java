package datumpeg.desktop.measure;

import datumpeg.desktop.control.Labels;
import java.util.Optional;
import javafx.event.EventHandler;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * Measuring a stage, or watching one target. While a session runs and this is shown, keys go to the
 * session whatever has the focus, except Tab, the arrows, the space bar and what is pressed with
 * Ctrl or Alt.
 */
public final class MeasureView extends StackPane {
  private final MeasureViewModel model;
  private final VBox setupBox;
  private final SetupPane setup;
  private Optional<RunningPane> running = Optional.empty();
  private final EventHandler<KeyEvent> pressed = this::pressed;
  private final EventHandler<KeyEvent> typed = this::typed;
  private boolean swallowed;

  public MeasureView(MeasureViewModel model) {
    this.model = model;
    getStyleClass().addAll("screen", "measure-screen");
    setup = new SetupPane(model);
    VBox.setVgrow(setup, Priority.ALWAYS);
    setupBox = new VBox(Labels.wrapping(model.words().text("measure.heading"), "heading"), setup);
    sceneProperty().addListener((property, before, scene) -> listen(before, scene));
    model.page().addListener((property, before, page) -> show(page));
    show(model.page().get());
  }

  private void listen(Scene before, Scene scene) {
    if (before != null) {
      before.removeEventFilter(KeyEvent.KEY_PRESSED, pressed);
      before.removeEventFilter(KeyEvent.KEY_TYPED, typed);
    }
    if (scene != null) {
      scene.addEventFilter(KeyEvent.KEY_PRESSED, pressed);
      scene.addEventFilter(KeyEvent.KEY_TYPED, typed);
    }
    model.shown(scene != null);
  }

  private void show(MeasurePage page) {
    if (page.running().isEmpty()) {
      running = Optional.empty();
      setup.show(page);
      become(setupBox);
      return;
    }
    RunningPane pane = running.orElseGet(() -> new RunningPane(model));
    running = Optional.of(pane);
    pane.show(page.running().get());
    become(pane);
  }

  private void become(Node node) {
    if (getChildren().isEmpty() || !getChildren().get(0).equals(node)) {
      getChildren().setAll(node);
    }
  }

  /** Before a session the first thing to choose takes the keys; during one nothing needs them. */
  @Override
  public void requestFocus() {
    if (!model.isRunning()) {
      setup.requestFocus();
    }
  }

  private void pressed(KeyEvent event) {
    swallowed = false;
    if (!model.isRunning() || isOfTheWindow(event)) {
      return;
    }
    swallowed =
        !event.getCode().isModifierKey() && model.session().pressed(event.getCode().getName());
    if (swallowed) {
      event.consume();
      return;
    }
    switch (event.getCode()) {
      case ENTER -> enter();
      case BACK_SPACE -> model.session().rubOut();
      case ESCAPE -> model.session().escape();
      default -> {
        return;
      }
    }
    event.consume();
  }

  /** A value that was begun is complete; without one the list of targets may be waiting for it. */
  private void enter() {
    boolean chosen =
        !model.session().hasTyped() && running.map(RunningPane::chooseTarget).orElse(false);
    if (!chosen) {
      model.session().enter();
    }
  }

  private void typed(KeyEvent event) {
    if (!model.isRunning() || isOfTheWindow(event)) {
      return;
    }
    String character = event.getCharacter();
    boolean spaceOfAButton = character.equals(" ") && !model.session().hasTyped();
    if (swallowed || (!spaceOfAButton && model.session().typed(character))) {
      event.consume();
    }
  }

  /** Ctrl, Alt and Command lead elsewhere, except where Ctrl and Alt together make a letter. */
  static boolean isOfTheWindow(KeyEvent event) {
    boolean graphic = event.isControlDown() && event.isAltDown();
    return !graphic
        && (event.isControlDown() || event.isAltDown() || event.isMetaDown())
        && event.getCode() != KeyCode.ENTER;
  }
}
