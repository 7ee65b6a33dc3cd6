package datumpeg.analysis.check;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Reading;
import java.util.List;
import java.util.Map;

/**
 * What one check made of a stage's readings.
 *
 * @param networks the readings adjusted together, with what came of it
 * @param used the readings it looked at, whether or not an outcome came of them
 */
public record CheckResult(
    List<Outcome> outcomes,
    List<Note> notes,
    Map<String, PointEstimate> points,
    Map<String, LevelEstimate> levels,
    List<Reading> used,
    List<Network> networks) {

  public static CheckResult of(List<Outcome> outcomes, List<Note> notes, List<Reading> used) {
    return new CheckResult(outcomes, notes, Map.of(), Map.of(), used, List.of());
  }
}
