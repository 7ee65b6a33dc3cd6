package datumpeg.analysis.reduce;

import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.conform.JointConformance;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.remedy.LinePlacement;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What one stage's readings say.
 *
 * @param stage its id
 * @param readingCount readings in force
 * @param outcomes in the order of checks and targets
 * @param points adjusted plan positions by point name: A1 at the origin, x axis through the last
 *     corner of side A
 * @param levels levels against their mean by point name
 * @param causes what is behind the outcomes, largest first; each told once
 * @param notes what else must be known
 * @param networks readings adjusted together, observed and adjusted kept apart
 * @param answer can we build, and what to do first
 * @param placement where to snap the lines on the slab, if its shape was found
 * @param doubted those of the outcomes that readings in contradiction to each other reach
 */
public record StageFindings(
    String stage,
    int readingCount,
    List<Outcome> outcomes,
    Map<String, PointEstimate> points,
    Map<String, LevelEstimate> levels,
    List<Cause> causes,
    List<Note> notes,
    List<Network> networks,
    Answer answer,
    Optional<LinePlacement> placement,
    Set<Outcome> doubted) {
  public StageFindings {
    doubted = Set.copyOf(doubted);
    outcomes = List.copyOf(outcomes);
    points = Collections.unmodifiableMap(new LinkedHashMap<>(points));
    levels = Collections.unmodifiableMap(new LinkedHashMap<>(levels));
    causes = List.copyOf(causes);
    notes = List.copyOf(notes);
    networks = List.copyOf(networks);
  }

  /** Findings that place no lines. */
  public StageFindings(
      String stage,
      int readingCount,
      List<Outcome> outcomes,
      Map<String, PointEstimate> points,
      Map<String, LevelEstimate> levels,
      List<Cause> causes,
      List<Note> notes,
      List<Network> networks,
      Answer answer) {
    this(
        stage,
        readingCount,
        outcomes,
        points,
        levels,
        causes,
        notes,
        networks,
        answer,
        Optional.empty(),
        Set.of());
  }

  /** Findings without networks. */
  public StageFindings(
      String stage,
      int readingCount,
      List<Outcome> outcomes,
      Map<String, PointEstimate> points,
      Map<String, LevelEstimate> levels,
      List<Cause> causes,
      List<Note> notes,
      Answer answer) {
    this(stage, readingCount, outcomes, points, levels, causes, notes, List.of(), answer);
  }

  /** How probable it is that all outcomes with limits conform, stale ones apart. */
  public JointConformance joint() {
    return JointConformance.of(outcomes);
  }

  public Optional<Outcome> outcome(String check, String target) {
    return outcomes.stream()
        .filter(outcome -> outcome.check().equals(check) && outcome.target().equals(target))
        .findFirst();
  }
}
