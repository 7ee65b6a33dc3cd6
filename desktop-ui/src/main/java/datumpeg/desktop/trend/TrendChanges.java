package datumpeg.desktop.trend;

import datumpeg.analysis.trend.RoundChange;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;

/** Says in words what changed from point to point, and whether by more than its uncertainty. */
final class TrendChanges {
  private final Words words;

  TrendChanges(Words words) {
    this.words = words;
  }

  /**
   * A sentence for each change; one that says so where there is none.
   *
   * @param labels of the points: one more than changes
   */
  List<String> sentences(List<String> labels, List<RoundChange> changes) {
    if (changes.isEmpty()) {
      return List.of(words.text("trend.once"));
    }
    List<String> sentences = new ArrayList<>();
    for (int i = 0; i < changes.size(); i++) {
      sentences.add(sentence(labels.get(i), labels.get(i + 1), changes.get(i)));
    }
    return sentences;
  }

  private String sentence(String before, String after, RoundChange change) {
    return words.text(
        change.moved() ? "trend.moved" : "trend.not-moved",
        before,
        after,
        shown(change, change.change()),
        shown(change, change.expandedUncertainty()).replace("+", ""));
  }

  private String shown(RoundChange change, double si) {
    Figures figures = words.figures();
    return figures.signedShown(figures.shown(change.after().unit(), si))
        + " "
        + figures.symbol(change.after().unit());
  }
}
