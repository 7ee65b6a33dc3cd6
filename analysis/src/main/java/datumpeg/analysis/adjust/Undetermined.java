package datumpeg.analysis.adjust;

import java.util.List;
import java.util.Optional;

/**
 * The observations do not determine all unknowns.
 *
 * @param names of the unknowns, points or set-ups that are not determined, in the caller's order
 * @param reason one sentence for a person
 * @param missing pairs of points that, measured one after the other, would determine the rest;
 *     empty where no such simple advice exists
 * @param determinedPart solution of the part that is determined, if any
 */
public record Undetermined<S>(
    List<String> names, String reason, List<PointPair> missing, Optional<S> determinedPart)
    implements Adjustment<S> {
  public Undetermined {
    names = List.copyOf(names);
    missing = List.copyOf(missing);
  }

  @Override
  public Optional<S> complete() {
    return Optional.empty();
  }

  @Override
  public Optional<S> available() {
    return determinedPart;
  }
}
