package datumpeg.desktop.control;

import datumpeg.desktop.text.Standing;
import java.util.Locale;
import javafx.scene.paint.Color;

/**
 * What a drawing is drawn with. The style sheet of the theme says how each looks; what stands here
 * is the light theme's, for a drawing without a style sheet.
 */
public enum Ink {
  PAPER("#ffffff"),
  TEXT("#12202b"),
  /** What is said in passing: the design, an axis. */
  QUIET("#45525d"),
  /** Lines that only divide. */
  LINE("#c9d0d6"),
  /** Lines around what matters. */
  STRONG_LINE("#8a98a4"),
  /** The ground of what stands out from the paper. */
  RAISED("#f1f4f6"),
  /** A limit. */
  LIMIT("#a01c1c"),
  /** What is chosen, or to be done now. */
  ACCENT("#1d4f7a"),
  CONFORMING("#1b5e3a"),
  UNDECIDED("#7a4b00"),
  NONCONFORMING("#a01c1c"),
  STALE("#5b3a86"),
  NOT_MEASURED("#56626d"),
  NO_LIMIT("#3f4b55");

  private final String light;

  Ink(String light) {
    this.light = light;
  }

  public static Ink of(Standing standing) {
    return valueOf(standing.name());
  }

  /** How a style sheet calls it, such as {@code not-measured}. */
  public String styleName() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  Color light() {
    return Color.web(light);
  }
}
