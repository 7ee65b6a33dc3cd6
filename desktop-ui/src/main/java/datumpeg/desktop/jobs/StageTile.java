package datumpeg.desktop.jobs;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.desktop.text.Standing;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One stage of a job in the strip.
 *
 * @param stage the stage's id
 * @param title its name on screen
 * @param counts how many outcomes stand how, the gravest first; empty when nothing was measured
 */
record StageTile(String stage, String title, List<Count> counts) {
  StageTile {
    counts = List.copyOf(counts);
  }

  /** So many outcomes that stand so. */
  record Count(Standing standing, int number) {}

  static StageTile of(String stage, String title, Optional<StageFindings> findings) {
    return new StageTile(stage, title, findings.map(StageTile::counts).orElse(List.of()));
  }

  private static List<Count> counts(StageFindings findings) {
    Map<Standing, Integer> numbers = new EnumMap<>(Standing.class);
    findings.outcomes().forEach(outcome -> numbers.merge(Standing.of(outcome), 1, Integer::sum));
    int notMeasured =
        (int)
            findings.notes().stream().filter(note -> note.kind() == Note.Kind.NOT_MEASURED).count();
    if (notMeasured > 0) {
      numbers.put(Standing.NOT_MEASURED, notMeasured);
    }
    return numbers.entrySet().stream()
        .map(entry -> new Count(entry.getKey(), entry.getValue()))
        .toList();
  }
}
