package datumpeg.analysis.check;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.remedy.LinePlacement;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What one check made of a stage's readings.
 *
 * @param networks the readings adjusted together, with what came of it
 * @param used the readings it looked at, whether or not an outcome came of them
 * @param placement where to snap the lines on the slab, if it found its shape
 * @param tests whether its readings fit together
 */
public record CheckResult(
    List<Outcome> outcomes,
    List<Note> notes,
    Map<String, PointEstimate> points,
    Map<String, LevelEstimate> levels,
    List<Reading> used,
    List<Network> networks,
    Optional<LinePlacement> placement,
    List<AgreementTest> tests) {

  /** A result without tests of its readings. */
  public CheckResult(
      List<Outcome> outcomes,
      List<Note> notes,
      Map<String, PointEstimate> points,
      Map<String, LevelEstimate> levels,
      List<Reading> used,
      List<Network> networks,
      Optional<LinePlacement> placement) {
    this(outcomes, notes, points, levels, used, networks, placement, List.of());
  }

  /** A result that places no lines. */
  public CheckResult(
      List<Outcome> outcomes,
      List<Note> notes,
      Map<String, PointEstimate> points,
      Map<String, LevelEstimate> levels,
      List<Reading> used,
      List<Network> networks) {
    this(outcomes, notes, points, levels, used, networks, Optional.empty());
  }

  /** The same with tests of its readings. */
  public CheckResult with(List<AgreementTest> agreement) {
    return new CheckResult(outcomes, notes, points, levels, used, networks, placement, agreement);
  }

  public static CheckResult of(List<Outcome> outcomes, List<Note> notes, List<Reading> used) {
    return new CheckResult(outcomes, notes, Map.of(), Map.of(), used, List.of());
  }
}
