package datumpeg.desktop.setting;

import java.util.Locale;

/** The colours of the window. Nothing is told by colour alone, so every theme tells the same. */
public enum Theme {
  LIGHT,
  DARK,
  /** Black on white with thick edges, for full daylight. */
  SUN;

  /** How files and texts call it. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
