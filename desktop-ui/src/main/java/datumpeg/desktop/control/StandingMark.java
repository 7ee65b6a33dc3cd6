package datumpeg.desktop.control;

import datumpeg.desktop.text.Standing;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Region;

/**
 * The shape of a standing, as large and in the ink that the style sheet says. It always stands
 * beside its word, so it has no accessible text of its own.
 */
public final class StandingMark extends Region {
  public StandingMark(Standing standing) {
    getStyleClass().setAll("standing-mark", standing.styleClass());
    setShape(StandingShape.of(standing).outline());
    setAccessibleRole(AccessibleRole.NODE);
  }
}
