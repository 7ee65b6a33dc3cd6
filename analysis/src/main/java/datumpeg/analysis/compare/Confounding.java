package datumpeg.analysis.compare;

import datumpeg.analysis.trend.DatedOutcome;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which other factors never vary apart from the one compared. Two groups can be told apart from
 * another factor only if some level of that is common to both, directly or by a chain of groups
 * that share levels; else whatever differs between the groups may as well be the other factor's
 * doing.
 */
final class Confounding {
  private final Factor factor;
  private final List<ComparedGroup> groups;

  Confounding(Factor factor, List<ComparedGroup> groups) {
    this.factor = factor;
    this.groups = groups;
  }

  /** One factor that does not vary apart between two groups. */
  record Tie(Factor other, String one, Set<String> levelsOfOne, String two, Set<String> ofTwo) {
    Tie {
      levelsOfOne = new LinkedHashSet<>(levelsOfOne);
      ofTwo = new LinkedHashSet<>(ofTwo);
    }
  }

  /** All ties between two groups. */
  List<Tie> between(String one, String two) {
    List<Tie> ties = new ArrayList<>();
    for (Factor other : others()) {
      Map<String, Set<String>> levels = levels(other);
      Set<String> ofOne = levels.getOrDefault(one, Set.of());
      Set<String> ofTwo = levels.getOrDefault(two, Set.of());
      if (!ofOne.isEmpty() && !ofTwo.isEmpty() && !linked(one, two, levels)) {
        ties.add(new Tie(other, one, ofOne, two, ofTwo));
      }
    }
    return ties;
  }

  /** Factors that vary between the jobs, but apart from the one compared. */
  List<Factor> varyingApart() {
    return others().stream().filter(this::variesApart).toList();
  }

  private boolean variesApart(Factor other) {
    Map<String, Set<String>> levels = levels(other);
    Set<String> all = new HashSet<>();
    levels.values().forEach(all::addAll);
    List<String> names = new ArrayList<>(levels.keySet());
    return all.size() > 1 && names.stream().allMatch(name -> linked(names.get(0), name, levels));
  }

  private List<Factor> others() {
    return Arrays.stream(Factor.values()).filter(other -> other != factor).toList();
  }

  /** By group the levels of another factor that occur in it; those nobody named are left out. */
  private Map<String, Set<String>> levels(Factor other) {
    Map<String, Set<String>> levels = new HashMap<>();
    for (ComparedGroup group : groups) {
      Set<String> found = new TreeSet<>();
      for (JobValue job : group.jobs()) {
        for (DatedOutcome outcome : job.outcomes()) {
          found.addAll(other.levels(outcome));
        }
      }
      found.remove("");
      levels.put(group.name(), found);
    }
    return levels;
  }

  /** Whether a chain of shared levels leads from one group to another. */
  private static boolean linked(String one, String two, Map<String, Set<String>> levels) {
    Set<String> reached = new HashSet<>(Set.of(one));
    Set<String> known = new HashSet<>(levels.getOrDefault(one, Set.of()));
    boolean grew = true;
    while (grew && !reached.contains(two)) {
      grew = false;
      for (Map.Entry<String, Set<String>> group : levels.entrySet()) {
        boolean shares = group.getValue().stream().anyMatch(known::contains);
        if (shares && reached.add(group.getKey())) {
          known.addAll(group.getValue());
          grew = true;
        }
      }
    }
    return reached.contains(two);
  }
}
