package datumpeg.analysis.adjust;

import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.JointEstimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The stations of an adjusted line and the differences between them. Immutable. */
public final class AdjustedLine {
  private final List<List<String>> parts;
  private final Fit fit;
  private final Map<String, List<String>> partOf = new HashMap<>();

  AdjustedLine(List<List<String>> parts, Fit fit) {
    this.parts = parts;
    this.fit = fit;
    parts.forEach(part -> part.forEach(station -> partOf.put(station, part)));
  }

  /** Observations with residuals and tests; its parameters are positions from each part's zero. */
  public Fit fit() {
    return fit;
  }

  /** Stations that hang together, each part in the caller's order. */
  public List<List<String>> parts() {
    return parts;
  }

  /** Whether it is one of the stations. */
  public boolean holds(String station) {
    return partOf.containsKey(station);
  }

  /** Whether observations connect the two stations, so that their difference is known. */
  public boolean connected(String from, String to) {
    return part(from) == part(to);
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
    JointEstimate parameters = fit.parameters();
    if (!parameters.contains(from)) {
      return parameters.contains(to) ? parameters.quantity(to) : parameters.constant(0);
    }
    return parameters.contains(to)
        ? parameters.difference(to, from)
        : parameters.quantity(from).scaled(-1);
  }

  private List<String> part(String station) {
    List<String> part = partOf.get(station);
    if (part == null) {
      throw new IllegalArgumentException("adjusted line: there is no station " + station);
    }
    return part;
  }
}
