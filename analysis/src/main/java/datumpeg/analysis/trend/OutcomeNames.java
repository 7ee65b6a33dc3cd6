package datumpeg.analysis.trend;

import datumpeg.analysis.measuring.CheckNames;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;

/** The names that occur in outcomes: what a filter can ask for. */
public record OutcomeNames(List<DatedOutcome> outcomes) {
  public OutcomeNames {
    outcomes = List.copyOf(outcomes);
  }

  /** Checks, in the order in which results tell them. */
  public List<String> checks() {
    Set<String> found = found(one -> Stream.of(one.outcome().check()));
    return CheckNames.ALL.stream().filter(found::contains).toList();
  }

  /** How targets of a check end from their last /, with it, such as /across. */
  public List<String> endings(String check) {
    return List.copyOf(
        found(
            one -> {
              String target = one.outcome().target();
              int slash = target.lastIndexOf('/');
              return one.outcome().check().equals(check) && slash > 0
                  ? Stream.of(target.substring(slash))
                  : Stream.empty();
            }));
  }

  public List<String> crews() {
    return List.copyOf(found(one -> Stream.of(one.job().crew())));
  }

  public List<String> sites() {
    return List.copyOf(found(one -> Stream.of(one.job().site())));
  }

  public List<String> slabLayers() {
    return List.copyOf(found(one -> Stream.of(one.job().slabBy())));
  }

  public List<String> meters() {
    return List.copyOf(found(one -> one.meters().stream()));
  }

  private Set<String> found(Function<DatedOutcome, Stream<String>> names) {
    Set<String> found = new TreeSet<>();
    outcomes.stream().flatMap(names).filter(name -> !name.isEmpty()).forEach(found::add);
    return found;
  }
}
