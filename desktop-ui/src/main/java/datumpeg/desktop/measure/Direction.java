package datumpeg.desktop.measure;

import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.measuring.Target;
import datumpeg.desktop.text.Words;

/** Which way a deviation of a target goes, as a person beside it says. Immutable. */
final class Direction {
  private final Words words;
  private final Target target;

  Direction(Words words, Target target) {
    this.words = words;
    this.target = target;
  }

  /** Which way a positive deviation goes; empty where that goes without saying. */
  String up() {
    return text("up");
  }

  /** Which way a negative one goes. */
  String down() {
    return text("down");
  }

  /** Which way this one goes; one too small to be written goes nowhere. */
  String of(double deviationMetres) {
    String written = words.figures().deviation(deviationMetres);
    if (!written.matches(".*[1-9].*")) {
      return "";
    }
    return deviationMetres > 0 ? up() : down();
  }

  /** From outside end 1, as portal frames are drawn, side B is on the left hand. */
  boolean isMirrored() {
    return kind().equals("across");
  }

  private String text(String way) {
    String kind = kind();
    return kind.isEmpty() ? "" : words.text("measure.toward." + kind + "." + way);
  }

  private String kind() {
    return switch (target.quantity()) {
      case TILT -> target.axis().map(Axis::text).orElse("");
      case DISTANCE -> "distance";
      case HEIGHT -> "height";
      case OFFSET -> target.first().feature().equals("slab") ? "" : "offset";
      default -> "";
    };
  }
}
