package datumpeg.bridge.meter.learn;

import datumpeg.bridge.frame.LinePattern.DecimalMark;
import datumpeg.bridge.frame.LineShape;
import datumpeg.bridge.meter.learn.LinePiece.Kind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Lines of one shape, one of each reading, and which of their numbers may be the value.
 *
 * @param lines cut into as many pieces each
 * @param value index of the number
 */
record PatternDraft(List<List<LinePiece>> lines, int value, DecimalMark mark) {

  /** Which piece says the direction, and by what. */
  record Direction(int index, List<String> minus, List<String> plus) {}

  /** What lines of one shape have in common: words and single marks may differ. */
  static String kinds(List<LinePiece> pieces) {
    StringBuilder kinds = new StringBuilder();
    for (LinePiece piece : pieces) {
      kinds.append(piece.is(Kind.MARK) ? 'W' : piece.kind().name().charAt(0));
    }
    return kinds.toString();
  }

  /**
   * Whether the piece can be the value. A comma is taken for a decimal mark only where one stands
   * in the number and no point goes on behind it: {@code 12345,21.5} are two numbers.
   */
  boolean isNumber() {
    List<LinePiece> line = lines.get(0);
    if (!line.get(value).is(Kind.NUMBER) || mark == DecimalMark.POINT) {
      return line.get(value).is(Kind.NUMBER);
    }
    boolean goesOn =
        value + 2 < line.size()
            && line.get(value + 1).text().equals(".")
            && line.get(value + 2).is(Kind.NUMBER);
    return line.get(value).text().indexOf(',') >= 0 && !goesOn;
  }

  List<Double> numbers() {
    return lines.stream().map(line -> line.get(value).number()).toList();
  }

  /**
   * The piece that is one thing below zero and another above, where the number has no sign of its
   * own.
   */
  Optional<Direction> direction(List<Displayed> displayed) {
    boolean below = displayed.stream().anyMatch(shown -> shown.siValue() < 0);
    if (!below || numbers().stream().anyMatch(number -> number < 0)) {
      return Optional.empty();
    }
    for (int index = 0; index < lines.get(0).size(); index++) {
      Optional<Direction> found = directionAt(index, displayed);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private Optional<Direction> directionAt(int index, List<Displayed> displayed) {
    Kind kind = lines.get(0).get(index).kind();
    if (kind != Kind.WORD && kind != Kind.MARK) {
      return Optional.empty();
    }
    Map<Boolean, TreeSet<String>> bySide = new HashMap<>();
    bySide.put(true, new TreeSet<>());
    bySide.put(false, new TreeSet<>());
    for (int i = 0; i < lines.size(); i++) {
      boolean below = displayed.get(i).siValue() < 0;
      bySide.getOrDefault(below, new TreeSet<>()).add(lines.get(i).get(index).text());
    }
    List<String> minus = List.copyOf(bySide.getOrDefault(true, new TreeSet<>()));
    List<String> plus = List.copyOf(bySide.getOrDefault(false, new TreeSet<>()));
    return plus.isEmpty() || plus.stream().anyMatch(minus::contains)
        ? Optional.empty()
        : Optional.of(new Direction(index, minus, plus));
  }

  /** The shape; empty where it cannot be written: marks that differ, a brace in the line. */
  Optional<LineShape> shape(Optional<Direction> direction) {
    StringBuilder text = new StringBuilder();
    for (int index = 0; index < lines.get(0).size(); index++) {
      Optional<String> part =
          direction.isPresent() && direction.get().index() == index
              ? Optional.of("{direction}")
              : part(index);
      if (part.isEmpty()) {
        return Optional.empty();
      }
      text.append(part.get());
    }
    try {
      return Optional.of(LineShape.parse(text.toString()));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private Optional<String> part(int index) {
    List<String> texts = new ArrayList<>();
    lines.forEach(line -> texts.add(line.get(index).text()));
    String first = texts.get(0);
    boolean same = texts.stream().allMatch(first::equals);
    return switch (lines.get(0).get(index).kind()) {
      case NUMBER -> Optional.of(index == value ? "{value}" : "{number}");
      case BLANK -> Optional.of(" ");
      case WORD -> Optional.of(same ? first : "{word}");
      case MARK -> same && !first.equals("{") ? Optional.of(first) : Optional.empty();
    };
  }
}
