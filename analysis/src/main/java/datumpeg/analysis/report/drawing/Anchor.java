package datumpeg.analysis.report.drawing;

import java.util.Locale;

/** Which part of a line of words stands at its spot. */
public enum Anchor {
  START,
  MIDDLE,
  END;

  String text() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Where words of a width begin when they are anchored at x. */
  public double left(double x, double width) {
    return switch (this) {
      case START -> x;
      case MIDDLE -> x - width / 2;
      case END -> x - width;
    };
  }
}
