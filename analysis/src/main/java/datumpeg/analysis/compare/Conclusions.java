package datumpeg.analysis.compare;

import datumpeg.analysis.quantity.LengthDisplay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What may be concluded from a comparison, and what may not, in sentences. */
final class Conclusions {
  /** Under so many jobs a group the intervals rest on hardly anything (no source). */
  private static final int FEW_JOBS = 5;

  private final Factor factor;
  private final String unit;
  private final List<ComparedGroup> groups;
  private final List<Difference> differences;
  private final SpreadComparison spread;
  private final double confidence;
  private final Confounding confounding;

  Conclusions(
      Factor factor,
      String unit,
      List<ComparedGroup> groups,
      List<Difference> differences,
      SpreadComparison spread,
      double confidence) {
    this.factor = factor;
    this.unit = unit;
    this.groups = groups;
    this.differences = differences;
    this.spread = spread;
    this.confidence = confidence;
    this.confounding = new Confounding(factor, groups);
  }

  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    if (groups.size() < 2) {
      sentences.add(nothingToCompare());
      return sentences;
    }
    bias(sentences);
    spread(sentences);
    ties(sentences);
    singles(sentences);
    few(sentences);
    return sentences;
  }

  private String nothingToCompare() {
    return groups.isEmpty()
        ? "No job has an outcome of this check, so there is nothing to compare."
        : "Only one "
            + factor.word()
            + " has outcomes of this check ("
            + name(groups.get(0).name())
            + "), so there is nothing to compare.";
  }

  private void bias(List<String> sentences) {
    differences.stream()
        .filter(Difference::isShown)
        .sorted(Comparator.comparingDouble(d -> -Math.abs(d.difference())))
        .forEach(difference -> sentences.add(shown(difference)));
    List<Difference> open = differences.stream().filter(d -> !d.isShown()).toList();
    if (!open.isEmpty()) {
      sentences.add(notShown(open));
    }
    if (differences.isEmpty()) {
      sentences.add(
          "No two "
              + factor.plural()
              + " have two jobs or more, so no difference between their means can be judged.");
    }
  }

  private String shown(Difference d) {
    return name(d.other())
        + " and "
        + name(d.one())
        + " differ in their mean by "
        + signed(d.difference())
        + " "
        + unit
        + ", between "
        + signed(d.lower())
        + " and "
        + signed(d.upper())
        + " "
        + unit
        + " ("
        + percent()
        + " for all pairs together).";
  }

  private String notShown(List<Difference> open) {
    double least = open.stream().mapToDouble(Difference::halfWidth).min().orElseThrow();
    double most = open.stream().mapToDouble(Difference::halfWidth).max().orElseThrow();
    String size =
        LengthDisplay.decimal(least, 1).equals(LengthDisplay.decimal(most, 1))
            ? LengthDisplay.decimal(least, 1)
            : LengthDisplay.decimal(least, 1) + " to " + LengthDisplay.decimal(most, 1);
    String pairs =
        open.size() == 1
            ? name(open.get(0).one()) + " and " + name(open.get(0).other())
            : differences.size() == open.size()
                ? "any two " + factor.plural()
                : "the other " + open.size() + " pairs";
    return "No difference in mean is shown between "
        + pairs
        + "; that does not say they are alike: from these jobs only a difference above "
        + size
        + " "
        + unit
        + " would show.";
  }

  private void spread(List<String> sentences) {
    if (spread.betweenJobs().isEmpty() && spread.withinJobs().isEmpty()) {
      sentences.add(
          "Spread cannot be compared: that needs three jobs or more of two "
              + factor.plural()
              + ".");
    } else if (spread.isShown(1 - confidence)) {
      sentences.add(
          "The "
              + factor.plural()
              + " are not equally spread ("
              + probabilities()
              + "): look at who scatters more before who is off on the average.");
    } else {
      sentences.add("No difference in spread beyond measuring is shown (" + probabilities() + ").");
    }
  }

  private String probabilities() {
    List<String> parts = new ArrayList<>();
    spread
        .betweenJobs()
        .ifPresent(p -> parts.add("from job to job p = " + LengthDisplay.decimal(p, 3)));
    spread.withinJobs().ifPresent(p -> parts.add("within jobs p = " + LengthDisplay.decimal(p, 3)));
    return String.join(", ", parts) + "; distances from the median, Brown and Forsythe";
  }

  private void ties(List<String> sentences) {
    for (Factor other : Factor.values()) {
      List<Confounding.Tie> ties = allTies(other);
      if (!ties.isEmpty()) {
        sentences.add(tied(other, ties));
      }
    }
    List<Factor> apart = confounding.varyingApart();
    if (!apart.isEmpty()) {
      sentences.add(
          "The jobs also differ in "
              + apart.stream().map(Factor::word).collect(Collectors.joining(" and "))
              + "; the means are not corrected for that.");
    }
  }

  private List<Confounding.Tie> allTies(Factor other) {
    List<Confounding.Tie> ties = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      for (int j = i + 1; j < groups.size(); j++) {
        confounding.between(groups.get(i).name(), groups.get(j).name()).stream()
            .filter(tie -> tie.other() == other)
            .forEach(ties::add);
      }
    }
    return ties;
  }

  private String tied(Factor other, List<Confounding.Tie> ties) {
    Confounding.Tie first = ties.get(0);
    return capital(factor.word())
        + " and "
        + other.word()
        + " never vary apart: "
        + name(first.one())
        + " only with "
        + names(first.levelsOfOne())
        + ", "
        + name(first.two())
        + " only with "
        + names(first.ofTwo())
        + (ties.size() > 1 ? ", and so on" : "")
        + ". Whether "
        + factor.word()
        + " or "
        + other.word()
        + " makes a difference cannot be told from these jobs.";
  }

  private void singles(List<String> sentences) {
    List<String> single =
        groups.stream().filter(g -> g.jobCount() == 1).map(g -> name(g.name())).toList();
    if (!single.isEmpty()) {
      sentences.add(
          "One job alone says nothing of how much jobs vary, so no interval is given for "
              + String.join(", ", single)
              + ".");
    }
  }

  private void few(List<String> sentences) {
    int least =
        groups.stream().mapToInt(ComparedGroup::jobCount).filter(n -> n > 1).min().orElse(0);
    if (least > 0 && least < FEW_JOBS) {
      sentences.add(
          "The smallest group compared has "
              + least
              + " jobs: these intervals take the jobs' means for normally distributed and cannot"
              + " check it.");
    }
  }

  private String name(String group) {
    return group.isEmpty() ? "(no " + factor.word() + " named)" : group;
  }

  private static String names(Set<String> levels) {
    return String.join(" and ", levels);
  }

  private String percent() {
    return LengthDisplay.decimal(100 * confidence, confidence > 0.9501 ? 2 : 0) + " %";
  }

  private static String signed(double value) {
    return LengthDisplay.signed(value, 1);
  }

  private static String capital(String word) {
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
  }
}
