package datumpeg.analysis.adjust;

import java.util.Optional;

/** All unknowns are determined. */
public record Adjusted<S>(S solution) implements Adjustment<S> {
  @Override
  public Optional<S> complete() {
    return Optional.of(solution);
  }

  @Override
  public Optional<S> available() {
    return complete();
  }
}
