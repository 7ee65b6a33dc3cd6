package datumpeg.desktop.control;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/**
 * Letters of one face and size, for texts that are drawn and not nodes: how wide they are, and
 * where a text is broken into lines.
 *
 * <p>One thread.
 */
public final class Typeface {
  private static final int MOST_WORDS_KEPT = 4096;

  private final Font font;
  private final Text probe = new Text();
  private final Map<String, Double> widths = new HashMap<>();
  private final double ascent;
  private final double lineHeight;
  private final double space;

  public Typeface(Font font) {
    this.font = font;
    probe.setFont(font);
    probe.setText("Ag");
    this.ascent = probe.getBaselineOffset();
    this.lineHeight = probe.getLayoutBounds().getHeight();
    this.space = measured("a a") - measured("aa");
  }

  public Font font() {
    return font;
  }

  /** From the top of a line to the foot of its letters. */
  public double ascent() {
    return ascent;
  }

  public double lineHeight() {
    return lineHeight;
  }

  /** A text broken between words where it must be, and within a word only where that is wider. */
  public List<String> lines(String text, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    double filled = 0;
    for (String word : text.split(" ", -1)) {
      String rest = word;
      if (filled > 0 && filled + space + width(word) > width) {
        lines.add(line.toString());
        line.setLength(0);
        filled = 0;
      }
      while (width(rest) > width && rest.length() > 1) {
        int fitting = fitting(rest, width);
        lines.add(rest.substring(0, fitting));
        rest = rest.substring(fitting);
      }
      filled += (filled > 0 ? space : 0) + width(rest);
      line.append(line.length() > 0 ? " " : "").append(rest);
    }
    lines.add(line.toString());
    return lines;
  }

  private int fitting(String word, double width) {
    int length = word.length() - 1;
    while (length > 1 && width(word.substring(0, length)) > width) {
      length--;
    }
    return length;
  }

  /** How wide a word is. */
  public double width(String word) {
    Double known = widths.get(word);
    if (known == null) {
      if (widths.size() >= MOST_WORDS_KEPT) {
        widths.clear();
      }
      known = measured(word);
      widths.put(word, known);
    }
    return known;
  }

  private double measured(String text) {
    probe.setText(text);
    return probe.getLayoutBounds().getWidth();
  }
}
