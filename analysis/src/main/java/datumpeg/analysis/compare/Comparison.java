package datumpeg.analysis.compare;

import datumpeg.analysis.trend.TrendQuestion;
import java.util.List;

/**
 * Groups of jobs compared by one check.
 *
 * @param factor what they are told apart by
 * @param unit of all numbers; empty if there are none
 * @param confidence of the groups' own intervals
 * @param jointConfidence of the differences, all pairs and all checks compared together
 * @param groups by name
 * @param severalLevels outcomes left out because they belong to several groups at once, such as
 *     those read with two meters
 * @param differences of all pairs of groups with two jobs or more
 * @param sentences what may be concluded and what not
 */
public record Comparison(
    TrendQuestion question,
    Factor factor,
    String unit,
    double confidence,
    double jointConfidence,
    List<ComparedGroup> groups,
    int severalLevels,
    List<Difference> differences,
    SpreadComparison spread,
    List<String> sentences) {
  /** The confidence used where none is stated. */
  public static final double CONFIDENCE = 0.95;

  public Comparison {
    groups = List.copyOf(groups);
    differences = List.copyOf(differences);
    sentences = List.copyOf(sentences);
  }

  /** How many jobs there are in all. */
  public int jobCount() {
    return (int)
        groups.stream()
            .flatMap(group -> group.jobs().stream())
            .map(JobValue::job)
            .distinct()
            .count();
  }
}
