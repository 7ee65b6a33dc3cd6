package datumpeg.analysis.reduce;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.Axis;
import datumpeg.analysis.remedy.Millimetres;
import datumpeg.analysis.remedy.Plumbing;
import datumpeg.analysis.remedy.Shifting;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Groups outcomes by what is behind them, so that each thing wrong is told once. */
final class Causes {
  private final Remedies remedies;
  private final SetOut setOut;

  Causes(Remedies remedies, SetOut setOut) {
    this.remedies = remedies;
    this.setOut = setOut;
  }

  /** The causes, nonconforming before undecided, the one furthest beyond its limits first. */
  List<Cause> of(List<Outcome> outcomes) {
    Map<String, List<Outcome>> groups = new LinkedHashMap<>();
    for (Outcome outcome : outcomes) {
      if (!outcome.stale() && isOpen(outcome)) {
        groups.computeIfAbsent(key(outcome, outcomes), key -> new ArrayList<>()).add(outcome);
      }
    }
    List<List<Outcome>> ordered = new ArrayList<>(groups.values());
    ordered.sort(
        Comparator.comparing((List<Outcome> group) -> kind(group) != Verdict.NONCONFORMING)
            .thenComparing(
                Comparator.comparingDouble((List<Outcome> group) -> severity(worst(group)))
                    .reversed()));
    List<Cause> causes = new ArrayList<>();
    ordered.forEach(group -> causes.add(cause(group, outcomes)));
    stale(outcomes, causes);
    return causes;
  }

  private static boolean isOpen(Outcome outcome) {
    return outcome.is(Verdict.NONCONFORMING) || outcome.is(Verdict.UNDECIDED);
  }

  /** What is behind an outcome: the slab's shape, one column, one row of frames, … */
  private static String key(Outcome outcome, List<Outcome> all) {
    String target = outcome.target();
    return switch (outcome.check()) {
      case "slab-size", "slab-diagonals", "slab-square" -> "slab shape";
      case "slab-level", "slab-level-point" -> "slab level";
      case "column-plumb" -> "column " + target.substring(0, target.indexOf('/'));
      case "portal-plumb" -> portalKey(target, all);
      case "frame-spacing", "spacing-match" -> spacingKey(outcome, all);
      case "overall-length" -> "spacing " + target;
      case "opening", "sheet-run" -> outcome.check() + " " + target.split("/", 2)[0];
      default -> outcome.check() + " " + target;
    };
  }

  /**
   * A bay that is off only aloft belongs to the worst open column that bounds it, if it has one.
   */
  private static String spacingKey(Outcome bay, List<Outcome> all) {
    String frames = bay.target().replaceFirst("/.*", "");
    boolean aloft = bay.check().equals("spacing-match") || bay.target().endsWith("/eave");
    boolean offBelow =
        all.stream()
            .filter(outcome -> outcome.target().equals(frames + "/base"))
            .anyMatch(Causes::isOpen);
    return all.stream()
        .filter(outcome -> aloft && !offBelow && outcome.check().equals("column-plumb"))
        .filter(outcome -> outcome.target().endsWith("/along") && isOpen(outcome))
        .filter(outcome -> List.of(frames.split("-")).contains(columnOf(outcome)))
        .max(Comparator.comparingDouble(Causes::severity))
        .map(outcome -> "column " + columnOf(outcome))
        .orElse("spacing " + bay.target().charAt(0));
  }

  private static String columnOf(Outcome plumb) {
    return plumb.target().substring(0, plumb.target().indexOf('/'));
  }

  /** A portal's mean lean belongs to its worst open column, if it has one. */
  private static String portalKey(String target, List<Outcome> all) {
    String number = target.substring(0, target.indexOf('/'));
    return all.stream()
        .filter(outcome -> outcome.check().equals("column-plumb"))
        .filter(outcome -> outcome.target().substring(1).equals(number + "/across"))
        .filter(Causes::isOpen)
        .max(Comparator.comparingDouble(Causes::severity))
        .map(column -> "column " + column.target().substring(0, column.target().indexOf('/')))
        .orElse("portal " + number);
  }

  private static Verdict kind(List<Outcome> group) {
    return group.stream().anyMatch(outcome -> outcome.is(Verdict.NONCONFORMING))
        ? Verdict.NONCONFORMING
        : Verdict.UNDECIDED;
  }

  /** How far a deviation is beyond its limit, as a multiple of the limit. */
  private static double severity(Outcome outcome) {
    Limits limits = outcome.limits().orElseThrow();
    double limit =
        outcome.deviation() < 0
            ? -limits.lower().orElse(Double.NEGATIVE_INFINITY)
            : limits.upper().orElse(Double.POSITIVE_INFINITY);
    return Math.abs(outcome.deviation()) / Math.max(limit, 1e-6);
  }

  /** The worst of a group; bays at the base before those at the eave, which only follow them. */
  private static Outcome worst(List<Outcome> group) {
    Verdict kind = kind(group);
    return group.stream()
        .filter(outcome -> outcome.is(kind))
        .max(
            Comparator.comparing((Outcome outcome) -> outcome.target().endsWith("/base"))
                .thenComparing(outcome -> outcome.check().equals("column-plumb"))
                .thenComparingDouble(Causes::severity)
                .thenComparing(Outcome::target, Comparator.reverseOrder()))
        .orElseThrow();
  }

  private Cause cause(List<Outcome> group, List<Outcome> all) {
    Outcome worst = worst(group);
    Verdict kind = kind(group);
    String action = kind == Verdict.UNDECIDED ? worst.remedy() : action(worst, all);
    return new Cause(
        kind,
        kind == Verdict.UNDECIDED
            ? "Too close to call: " + sentence(worst, all)
            : capital(sentence(worst, all)),
        action,
        group.stream().map(outcome -> outcome.check() + " " + outcome.target()).toList());
  }

  private static String capital(String sentence) {
    return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
  }

  private String sentence(Outcome worst, List<Outcome> all) {
    String target = worst.target();
    String amount = Millimetres.with(worst.deviation(), worst.expandedUncertainty());
    boolean plus = worst.deviation() > 0;
    return switch (worst.check()) {
      case "slab-square" ->
          "the slab is out of square: corner "
              + target
              + " is "
              + (plus ? "wider" : "narrower")
              + " than designed by "
              + amount
              + " over its shorter side"
              + diagonalsAgree(all)
              + ".";
      case "slab-diagonals" -> "the slab's diagonals differ by " + amount + ".";
      case "slab-size" ->
          "slab side " + target + " is " + amount + (plus ? " too long." : " too short.");
      case "slab-level" -> "the slab's levels spread over " + amount + " (" + worst.aside() + ").";
      case "slab-level-point" ->
          target + " lies " + amount + (plus ? " above" : " below") + " the slab's mean level.";
      case "seat-level" ->
          "the seats under the bases spread over " + amount + " (" + worst.aside() + ").";
      case "column-plumb" ->
          "column "
              + target.substring(0, target.indexOf('/'))
              + " leans "
              + amount
              + " toward "
              + Plumbing.towards(
                  target.endsWith("/along") ? Axis.ALONG : Axis.ACROSS, worst.deviation())
              + " over its height.";
      case "portal-plumb" ->
          "portal "
              + target.substring(0, target.indexOf('/'))
              + " leans "
              + amount
              + " toward "
              + Plumbing.towards(Axis.ACROSS, worst.deviation())
              + " on average.";
      case "frame-spacing" ->
          "bay " + bay(target) + " is " + amount + (plus ? " too long." : " too short.");
      case "spacing-match" ->
          "bay "
              + target
              + " is "
              + amount
              + (plus ? " wider" : " narrower")
              + " at the eave than at the base.";
      case "overall-length" ->
          "side "
              + target
              + " is "
              + amount
              + (plus ? " too long" : " too short")
              + " between its end faces.";
      case "clear-span" ->
          "the clear span at frame "
              + target
              + " is "
              + amount
              + (plus ? " too wide." : " too narrow.");
      case "rafter-pair" ->
          "rafter pair "
              + target
              + " is "
              + amount
              + (plus ? " too wide" : " too narrow")
              + " between its tips.";
      case "line-parallel" ->
          "the column lines " + (plus ? "spread" : "close") + " by " + amount + " toward end n.";
      default -> DetailWords.sentence(worst);
    };
  }

  /** A2-A3/base as a person says it: A2-A3 at the base. */
  private static String bay(String target) {
    return target.replaceFirst("/", " at the ");
  }

  private static String diagonalsAgree(List<Outcome> all) {
    return all.stream()
            .anyMatch(o -> o.check().equals("slab-diagonals") && o.is(Verdict.CONFORMING))
        ? ", though its diagonals agree"
        : "";
  }

  private String action(Outcome worst, List<Outcome> all) {
    if (!worst.check().equals("frame-spacing")) {
      return worst.remedy();
    }
    int slash = worst.target().indexOf('/');
    String feature = worst.target().substring(slash + 1);
    String side =
        worst.target().substring(0, 1).matches("[A-Z]") ? worst.target().substring(0, 1) : "";
    Map<String, Double> moves = moves(side, feature, all);
    boolean movable =
        feature.equals("base") ? remedies.movability().bases() : remedies.movability().tops();
    if (moves.isEmpty()) {
      return worst.remedy();
    }
    String words = Shifting.words(moves);
    return movable
        ? "Shift "
            + words
            + ", which brings every bay inside its limits (each is known to "
            + Millimetres.of(worst.expandedUncertainty())
            + "); then read the bays again."
        : "The "
            + feature
            + "s are fixed by now: ask the engineer before shifting "
            + words
            + ", which would bring every bay inside its limits.";
  }

  /**
   * The shift that brings every bay of a row inside its limits; empty if a bay was not measured.
   */
  private Map<String, Double> moves(String side, String feature, List<Outcome> all) {
    List<String> frames = new ArrayList<>(List.of(side + 1));
    List<Shifting.Bay> bays = new ArrayList<>();
    for (int number = 1; number < setOut.building().portalFrameCount(); number++) {
      String target = side + number + "-" + side + (number + 1) + "/" + feature;
      all.stream()
          .filter(o -> o.check().equals("frame-spacing") && o.target().equals(target))
          .findFirst()
          .ifPresent(bay -> bays.add(inside(bay)));
      frames.add(side + (number + 1));
    }
    return bays.size() == frames.size() - 1
        ? Shifting.moves(frames, bays, overall(side, feature, all))
        : Map.of();
  }

  /** The overall length of a side with its limits, where it was measured at the base. */
  private static Optional<Shifting.Bay> overall(String side, String feature, List<Outcome> all) {
    return feature.equals("base")
        ? all.stream()
            .filter(o -> o.check().equals("overall-length") && o.target().equals(side))
            .filter(o -> o.limits().isPresent())
            .findFirst()
            .map(Causes::inside)
        : Optional.empty();
  }

  private static Shifting.Bay inside(Outcome bay) {
    Limits limits = bay.limits().orElseThrow();
    double expanded = bay.expandedUncertainty();
    return new Shifting.Bay(
        bay.deviation(),
        limits.lower().orElse(Double.NEGATIVE_INFINITY) + expanded,
        limits.upper().orElse(Double.POSITIVE_INFINITY) - expanded);
  }

  private static void stale(List<Outcome> outcomes, List<Cause> causes) {
    List<String> stale =
        outcomes.stream()
            .filter(Outcome::stale)
            .map(outcome -> outcome.check() + " " + outcome.target())
            .toList();
    if (!stale.isEmpty()) {
      causes.add(
          new Cause(
              Verdict.UNDECIDED,
              "Something was moved after it was measured, so "
                  + (stale.size() == 1 ? "one outcome is" : stale.size() + " outcomes are")
                  + " stale.",
              "Measure again: " + String.join(", ", stale) + ".",
              stale));
    }
  }
}
