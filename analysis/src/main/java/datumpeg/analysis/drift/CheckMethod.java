package datumpeg.analysis.drift;

import datumpeg.analysis.quantity.Dimension;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** How a meter is checked, and by which values. */
public enum CheckMethod {
  /** Readings of a distance that is known better. */
  KNOWN_DISTANCE("known-distance", List.of("known", "known-uncertainty", "reading")),
  /** Three points in a line: what the two parts come to more than the whole. */
  ZERO_CONSTANT("zero-constant", List.of("AB", "BC", "AC")),
  /** A level read from the middle between two pegs, then from beside the first. */
  TWO_PEG("two-peg", List.of("middle-P", "middle-Q", "near-P", "near-Q", "sight-P", "sight-Q")),
  /** A tilt meter read, turned end for end, and read again. */
  REVERSAL("reversal", List.of("face-1", "face-2"));

  private final String text;
  private final String labels;

  CheckMethod(String text, List<String> labels) {
    this.text = text;
    this.labels = String.join(" ", labels);
  }

  /** How it is written. */
  public String text() {
    return text;
  }

  /** What its values are called; {@code known-uncertainty} may be left out. */
  public List<String> labels() {
    return List.of(labels.split(" ", -1));
  }

  /** What its values measure. */
  public Dimension dimension() {
    return this == REVERSAL ? Dimension.ANGLE : Dimension.LENGTH;
  }

  public static Optional<CheckMethod> ofText(String text) {
    return Arrays.stream(values()).filter(method -> method.text.equals(text)).findFirst();
  }
}
