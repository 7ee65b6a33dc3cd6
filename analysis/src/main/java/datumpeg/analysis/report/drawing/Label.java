package datumpeg.analysis.report.drawing;

import java.util.List;

/**
 * Some lines of words that belong to one spot, set where no other words stand.
 *
 * @param title the first line, bold; empty for none
 */
record Label(Spot at, Anchor anchor, Side side, String title, List<String> lines) {
  private static final int TRIES = 24;

  Label {
    lines = List.copyOf(lines);
  }

  /** Which way from its spot a label lies, and moves on while its place is taken. */
  enum Side {
    ABOVE,
    BELOW
  }

  /** Sets the words; returns the room of the first line. */
  Box drawOn(Sketch sketch) {
    double down = side == Side.BELOW ? Sketch.LINE_HEIGHT : -Sketch.LINE_HEIGHT;
    Spot start = side == Side.BELOW ? at : at.moved(0, -Sketch.LINE_HEIGHT * (count() - 1));
    int tries = 0;
    while (tries < TRIES && isTaken(sketch, start)) {
      start = start.moved(0, down / 2);
      tries++;
    }
    write(sketch, start);
    return sketch.inside(sketch.box(start, anchor, weight(0), text(0)));
  }

  private int count() {
    return lines.size() + (title.isEmpty() ? 0 : 1);
  }

  private boolean isTaken(Sketch sketch, Spot start) {
    for (int line = 0; line < count(); line++) {
      Spot baseline = start.moved(0, line * Sketch.LINE_HEIGHT);
      if (sketch.taken(sketch.inside(sketch.box(baseline, anchor, weight(line), text(line))))) {
        return true;
      }
    }
    return false;
  }

  private void write(Sketch sketch, Spot start) {
    for (int line = 0; line < count(); line++) {
      sketch.words(start.moved(0, line * Sketch.LINE_HEIGHT), anchor, weight(line), text(line));
    }
  }

  private Sketch.Weight weight(int line) {
    return line == 0 && !title.isEmpty() ? Sketch.Weight.BOLD : Sketch.Weight.REGULAR;
  }

  private String text(int line) {
    if (title.isEmpty()) {
      return lines.get(line);
    }
    return line == 0 ? title : lines.get(line - 1);
  }
}
