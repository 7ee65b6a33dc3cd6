package datumpeg.analysis.reduce;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.tell.Severity;
import datumpeg.analysis.tell.Situation;
import datumpeg.analysis.tell.Tellings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Groups outcomes by what is behind them, so that each thing wrong is told once. */
final class Causes {
  private final Situation situation;
  private final Function<Outcome, Optional<String>> before;

  /**
   * @param before what to do before anything is done about an outcome, where its readings
   *     contradict each other
   */
  Causes(Situation situation, Function<Outcome, Optional<String>> before) {
    this.situation = situation;
    this.before = before;
  }

  /** The causes, nonconforming before undecided, the one furthest beyond its limits first. */
  List<Cause> of(List<Outcome> outcomes) {
    Map<String, List<Outcome>> groups = new LinkedHashMap<>();
    for (Outcome outcome : outcomes) {
      if (!outcome.stale() && Severity.isOpen(outcome)) {
        groups
            .computeIfAbsent(Tellings.cause(outcome, outcomes), key -> new ArrayList<>())
            .add(outcome);
      }
    }
    List<Group> ordered = new ArrayList<>();
    groups.values().forEach(group -> ordered.add(Group.of(group)));
    ordered.sort(
        Comparator.comparing((Group group) -> group.kind() != Verdict.NONCONFORMING)
            .thenComparing(Comparator.comparingDouble(Group::severity).reversed()));
    List<Cause> causes = new ArrayList<>();
    ordered.forEach(group -> causes.add(cause(group, outcomes)));
    stale(outcomes, causes);
    return causes;
  }

  /**
   * Outcomes with one thing behind them.
   *
   * @param severity of the worst, without the digits that rounding leaves
   */
  private record Group(List<Outcome> outcomes, Verdict kind, Outcome worst, double severity) {
    static Group of(List<Outcome> outcomes) {
      Verdict kind = Causes.kind(outcomes);
      Outcome worst = Causes.worst(outcomes, kind);
      return new Group(outcomes, kind, worst, Math.rint(Severity.of(worst) * 1e9));
    }
  }

  private static Verdict kind(List<Outcome> group) {
    return group.stream().anyMatch(outcome -> outcome.is(Verdict.NONCONFORMING))
        ? Verdict.NONCONFORMING
        : Verdict.UNDECIDED;
  }

  /** The worst of a group; bays at the base before those at the eave, which only follow them. */
  private static Outcome worst(List<Outcome> group, Verdict kind) {
    return group.stream()
        .filter(outcome -> outcome.is(kind))
        .max(
            Comparator.comparing((Outcome outcome) -> outcome.target().endsWith("/base"))
                .thenComparing(outcome -> outcome.check().equals("column-plumb"))
                .thenComparingDouble(Severity::of)
                .thenComparing(Outcome::target, Comparator.reverseOrder()))
        .orElseThrow();
  }

  private Cause cause(Group group, List<Outcome> all) {
    Outcome worst = group.worst();
    Verdict kind = group.kind();
    Optional<String> first = before.apply(worst);
    String sentence = Tellings.sentence(worst, all, situation);
    if (kind == Verdict.UNDECIDED) {
      sentence = "Too close to call: " + sentence;
    } else if (first.isPresent()) {
      sentence = "In doubt: " + sentence;
    }
    return new Cause(
        kind,
        capital(sentence),
        kind == Verdict.UNDECIDED
            ? worst.remedy()
            : Remedies.after(first, Tellings.action(worst, all, situation)),
        group.outcomes().stream().map(Causes::symptom).toList());
  }

  private static String symptom(Outcome outcome) {
    return outcome.check() + " " + outcome.target();
  }

  private static String capital(String sentence) {
    return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
  }

  private static void stale(List<Outcome> outcomes, List<Cause> causes) {
    List<Outcome> stale = outcomes.stream().filter(Outcome::stale).toList();
    if (!stale.isEmpty()) {
      causes.add(
          new Cause(
              Verdict.UNDECIDED,
              "Something was moved after it was measured, so "
                  + (stale.size() == 1 ? "one outcome is" : stale.size() + " outcomes are")
                  + " stale.",
              "Measure again: "
                  + stale.stream().map(Tellings::name).collect(Collectors.joining("; "))
                  + ".",
              stale.stream().map(Causes::symptom).toList()));
    }
  }
}
