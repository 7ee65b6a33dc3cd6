package datumpeg.analysis.report;

import datumpeg.analysis.reduce.StageFindings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Short numbers for the readings a document stands on, in the order they are first used. */
final class ReadingNumbers {
  private final Map<String, Integer> numbers = new LinkedHashMap<>();

  ReadingNumbers(List<StageFindings> stages) {
    for (StageFindings stage : stages) {
      stage.outcomes().forEach(outcome -> outcome.readingIds().forEach(this::count));
      stage.notes().forEach(note -> note.readingIds().forEach(this::count));
    }
  }

  private void count(String id) {
    numbers.putIfAbsent(id, numbers.size() + 1);
  }

  /** All readings by their number. */
  List<String> ids() {
    return List.copyOf(numbers.keySet());
  }

  /** Some of them, runs drawn together: {@code R1–R4, R7}. */
  String text(List<String> ids) {
    List<Integer> sorted =
        ids.stream()
            .map(id -> Objects.requireNonNull(numbers.get(id)))
            .distinct()
            .sorted()
            .toList();
    List<String> runs = new ArrayList<>();
    for (int from = 0; from < sorted.size(); ) {
      int to = from;
      while (to + 1 < sorted.size() && sorted.get(to + 1) == sorted.get(to) + 1) {
        to++;
      }
      runs.add(run(sorted.get(from), sorted.get(to)));
      from = to + 1;
    }
    return String.join(", ", runs);
  }

  private static String run(int first, int last) {
    if (first == last) {
      return "R" + first;
    }
    return "R" + first + (last == first + 1 ? ", R" : "–R") + last;
  }
}
