package datumpeg.analysis.report.drawing;

import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.report.writing.CheckWords;
import datumpeg.analysis.report.writing.Markup;
import java.util.List;
import java.util.Optional;

/**
 * A verdict as a shape: an open ring conforms, a filled square does not, a hatched diamond is
 * undecided, a short dash has no limit. A word always stands beside it.
 */
public final class VerdictMark {
  private VerdictMark() {}

  /** The mark as a drawing of its own, to stand in a line of text. */
  public static Markup inline(Optional<Verdict> verdict) {
    Sketch sketch = new Sketch(20, CheckWords.verdict(verdict));
    Spot centre = new Spot(10, 10);
    sketch.rectangle(Ink.BLANK, new Box(2, 2, 16, 16));
    draw(sketch, centre, 7, verdict);
    return sketch.picture().svg();
  }

  static void draw(Sketch sketch, Spot centre, double half, Optional<Verdict> verdict) {
    if (verdict.isEmpty()) {
      sketch.line(Ink.FOUND, centre.moved(-half, 0), centre.moved(half, 0));
      return;
    }
    switch (verdict.get()) {
      case CONFORMING -> sketch.circle(Ink.PAPER, centre, half * 0.9);
      case NONCONFORMING -> sketch.rectangle(Ink.SOLID, Box.around(centre, half * 0.9));
      case UNDECIDED -> {
        diamond(sketch, Ink.PAPER, centre, half * 1.15);
        hatch(sketch, centre, half * 1.15);
      }
    }
  }

  /** A mark with the number of a cause in it. */
  static void numbered(Sketch sketch, Spot centre, int number, Verdict kind) {
    Spot baseline = centre.moved(0, Sketch.FONT_SIZE * 0.36);
    String text = Integer.toString(number);
    if (kind == Verdict.NONCONFORMING) {
      sketch.rectangle(Ink.SOLID, Box.around(centre, 9));
      sketch.reversedWords(baseline, text);
    } else {
      diamond(sketch, Ink.PAPER, centre, 13);
      sketch.bareWords(baseline, Anchor.MIDDLE, Sketch.Weight.BOLD, text);
    }
  }

  private static void diamond(Sketch sketch, Ink ink, Spot centre, double half) {
    sketch.polygon(
        ink,
        List.of(
            centre.moved(0, -half),
            centre.moved(half, 0),
            centre.moved(0, half),
            centre.moved(-half, 0)));
  }

  /** Lines parallel to one side of the diamond. */
  private static void hatch(Sketch sketch, Spot centre, double half) {
    for (double across : new double[] {-0.5, 0, 0.5}) {
      double u = across * half;
      sketch.line(
          Ink.THIN,
          centre.moved((u - half) / 2, (u + half) / 2),
          centre.moved((u + half) / 2, (u - half) / 2));
    }
  }
}
