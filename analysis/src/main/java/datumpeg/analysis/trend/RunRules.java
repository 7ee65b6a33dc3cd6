package datumpeg.analysis.trend;

import datumpeg.analysis.trend.RunRule.Kind;
import java.util.ArrayList;
import java.util.List;

/** Published sets of run rules. Each rule more finds more, and cries wolf more often. */
public enum RunRules {
  /**
   * As listed in NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2 (WECO rules and trends).
   */
  WESTERN_ELECTRIC("Western Electric rules, as in the NIST/SEMATECH e-Handbook, 6.3.2"),
  /** L. S. Nelson, The Shewhart control chart: tests for special causes, 1984. */
  NELSON("L. S. Nelson, Journal of Quality Technology 16 (1984) 237-239"),
  /** The control limits alone. */
  LIMITS_ONLY("control limits alone");

  private final String source;

  RunRules(String source) {
    this.source = source;
  }

  public String source() {
    return source;
  }

  public List<RunRule> rules() {
    RunRule limit = RunRule.beyond(1, 1, 3);
    RunRule twoOfThree = RunRule.beyond(2, 3, 2);
    RunRule fourOfFive = RunRule.beyond(4, 5, 1);
    RunRule steady = RunRule.inARow(Kind.RISING_OR_FALLING, 6);
    RunRule alternating = RunRule.inARow(Kind.ALTERNATING, 14);
    return switch (this) {
      case WESTERN_ELECTRIC ->
          List.of(
              limit, twoOfThree, fourOfFive, RunRule.inARow(Kind.ONE_SIDE, 8), steady, alternating);
      case NELSON ->
          List.of(
              limit,
              RunRule.inARow(Kind.ONE_SIDE, 9),
              steady,
              alternating,
              twoOfThree,
              fourOfFive,
              new RunRule(Kind.NEAR_THE_CENTRE, 15, 15, 1),
              new RunRule(Kind.BEYOND_ON_EITHER_SIDE, 8, 8, 1));
      case LIMITS_ONLY -> List.of(limit);
    };
  }

  /**
   * What speaks against mere chance, in the order of the points; runs of one rule that overlap are
   * told once. On a chart of averages, which hang together, only its limits are looked at.
   */
  public List<RunSignal> signals(ControlChart chart) {
    List<RunSignal> signals = new ArrayList<>();
    for (RunRule rule : chart.isOfIndividuals() ? rules() : LIMITS_ONLY.rules()) {
      signals.addAll(new RunSearch(chart, rule).signals());
    }
    signals.sort(RunSignal.IN_ORDER);
    return List.copyOf(signals);
  }
}
