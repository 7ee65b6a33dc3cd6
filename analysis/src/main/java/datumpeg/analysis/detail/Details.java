package datumpeg.analysis.detail;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a plan may give beyond frames, slab and openings. All of it may be absent.
 *
 * @param mullions end 1 before end n, each end from side A to side B
 * @param gutters by side, A or B
 */
public record Details(
    List<Mullion> mullions,
    Optional<Anchors> anchors,
    Map<Character, Gutter> gutters,
    Optional<FlatnessPlan> flatness) {
  /** A plan that gives none of it. */
  public static final Details NONE =
      new Details(List.of(), Optional.empty(), Map.of(), Optional.empty());

  public Details {
    mullions = List.copyOf(mullions);
    gutters = Collections.unmodifiableMap(new TreeMap<>(gutters));
  }

  public Details withMullions(List<Mullion> given) {
    return new Details(given, anchors, gutters, flatness);
  }

  public Details withAnchors(Anchors given) {
    return new Details(mullions, Optional.of(given), gutters, flatness);
  }

  public Details withGutters(Map<Character, Gutter> given) {
    return new Details(mullions, anchors, given, flatness);
  }

  public Details withFlatness(FlatnessPlan given) {
    return new Details(mullions, anchors, gutters, Optional.of(given));
  }
}
