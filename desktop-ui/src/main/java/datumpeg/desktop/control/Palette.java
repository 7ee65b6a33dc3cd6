package datumpeg.desktop.control;

import datumpeg.desktop.text.Standing;
import java.util.EnumMap;
import java.util.Map;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;

/**
 * The inks of the theme and the size of letters: what a drawing is painted with. Immutable.
 *
 * @param inks every ink
 * @param lettersPixels how high the letters of plain text are: 1 em; sizes that belong to letters
 *     are taken from it, so that they grow with the user's text size
 * @param heavyLetters whether plain text is bold too, to be read in full daylight
 */
public record Palette(Map<Ink, Color> inks, double lettersPixels, boolean heavyLetters) {
  /** The size of plain text at 100 %. */
  static final double USUAL_LETTERS_PIXELS = 15;

  public Palette {
    inks = Map.copyOf(inks);
  }

  /** The light theme at its usual size. */
  public static Palette light() {
    Map<Ink, Color> inks = new EnumMap<>(Ink.class);
    for (Ink ink : Ink.values()) {
      inks.put(ink, ink.light());
    }
    return new Palette(inks, USUAL_LETTERS_PIXELS, false);
  }

  public Color ink(Ink ink) {
    return inks.getOrDefault(ink, Color.BLACK);
  }

  public Color ink(Standing standing) {
    return ink(Ink.of(standing));
  }

  /** The plain face, so many times the size of plain text. */
  public Font font(double times) {
    return heavyLetters ? bold(times) : Font.font(null, FontWeight.NORMAL, lettersPixels * times);
  }

  /** The bold face, so many times the size of plain text. */
  public Font bold(double times) {
    return Font.font(null, FontWeight.BOLD, lettersPixels * times);
  }

  /** So many times the height of plain text. */
  public double em(double times) {
    return lettersPixels * times;
  }
}
