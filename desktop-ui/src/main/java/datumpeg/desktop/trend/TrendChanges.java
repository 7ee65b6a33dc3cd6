package datumpeg.desktop.trend;

import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * Says in words what changed from point to point. A change d₂ − d₁ has the uncertainty √(U₁² + U₂²)
 * when both are independent (JCGM 100:2008, 5.1.2); an error common to both, such as one meter's,
 * cancels in the change, so that the figure errs on the cautious side.
 */
final class TrendChanges {
  private final Words words;

  TrendChanges(Words words) {
    this.words = words;
  }

  List<String> sentences(List<TrendPoint> points, String unit) {
    if (points.size() < 2) {
      return points.isEmpty() ? List.of() : List.of(words.text("trend.once"));
    }
    List<String> sentences = new ArrayList<>();
    for (int i = 1; i < points.size(); i++) {
      sentences.add(sentence(points.get(i - 1), points.get(i), unit));
    }
    return sentences;
  }

  private String sentence(TrendPoint before, TrendPoint after, String unit) {
    Figures figures = words.figures();
    double change = after.deviation() - before.deviation();
    double uncertainty = Math.hypot(before.uncertainty(), after.uncertainty());
    boolean moved = Math.abs(change) > uncertainty;
    return words.text(
        moved ? "trend.moved" : "trend.not-moved",
        before.label(),
        after.label(),
        figures.signedShown(change) + " " + unit,
        figures.signedShown(uncertainty).replace("+", "") + " " + unit);
  }
}
