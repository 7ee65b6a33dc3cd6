package datumpeg.analysis.adjust;

import java.util.Optional;

/**
 * What came of an adjustment: a solution, or the names of what the observations leave undetermined.
 *
 * @param <S> the solution's type
 */
public sealed interface Adjustment<S> permits Adjusted, Undetermined {
  /** The solution, if all unknowns were determined. */
  Optional<S> complete();

  /** The complete solution, or that of the part which is determined, if there is one. */
  Optional<S> available();
}
