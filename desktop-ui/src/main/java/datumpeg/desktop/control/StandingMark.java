package datumpeg.desktop.control;

import datumpeg.desktop.text.Standing;
import javafx.geometry.Insets;
import javafx.scene.AccessibleRole;
import javafx.scene.layout.Background;
import javafx.scene.layout.BackgroundFill;
import javafx.scene.layout.CornerRadii;
import javafx.scene.layout.Region;

/**
 * The shape of a standing, as large as the style sheet says. It always stands beside its word, so
 * it has no accessible text of its own.
 */
public final class StandingMark extends Region {
  public StandingMark(Standing standing) {
    getStyleClass().setAll("standing-mark", standing.styleClass());
    StandingShape shape = StandingShape.of(standing);
    setShape(shape.outline());
    setBackground(new Background(new BackgroundFill(shape.ink(), CornerRadii.EMPTY, Insets.EMPTY)));
    setAccessibleRole(AccessibleRole.NODE);
  }
}
