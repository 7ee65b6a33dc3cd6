package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.List;

/** The stations of an adjusted line and the differences between them. Immutable. */
public final class AdjustedLine {
  private final List<List<String>> parts;
  private final Fit fit;

  AdjustedLine(List<List<String>> parts, Fit fit) {
    this.parts = parts;
    this.fit = fit;
  }

  /** Observations with residuals and tests; its parameters are positions from each part's zero. */
  public Fit fit() {
    return fit;
  }

  /** Stations that hang together, each part in the caller's order. */
  public List<List<String>> parts() {
    return parts;
  }

  /** Whether observations connect the two stations, so that their difference is known. */
  public boolean connected(String from, String to) {
    return part(from).contains(to);
  }

  /**
   * Position of {@code to} less that of {@code from}, in metres.
   *
   * @throws IllegalArgumentException if nothing connects them; see {@link #connected}
   */
  public Estimate difference(String from, String to) {
    return linearisedDifference(from, to).estimate();
  }

  /** As {@link #difference}, to be combined with others. */
  public Linearised linearisedDifference(String from, String to) {
    if (!connected(from, to)) {
      throw new IllegalArgumentException(
          "difference from " + from + " to " + to + ": no observation connects them");
    }
    return position(to).minus(position(from));
  }

  private Linearised position(String station) {
    JointEstimate parameters = fit.parameters();
    return parameters.contains(station) ? parameters.quantity(station) : parameters.constant(0);
  }

  private List<String> part(String station) {
    return parts.stream()
        .filter(part -> part.contains(station))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("adjusted line: there is no station " + station));
  }
}
