package datumpeg.analysis.check;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.uncertainty.Estimate;
import datumpeg.analysis.uncertainty.Linearised;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * How straight a row of places is: the greatest deviation from the line through its ends ({@code
 * /chord}) and from the line that fits all of it best ({@code /best}), whichever way.
 *
 * <p>With offsets y at distances x along: off the chord a place is y − (1 − s)·y₁ − s·yₙ, s its
 * share of the way; off the best line it is the residual of the least squares line, y − ȳ − b·(x −
 * x̄), b = Σ(x − x̄)·y / Σ(x − x̄)². Both are linear in the offsets, so what all readings share
 * drops out. Of n deviations the greatest is decided through the greatest of n errors: see {@link
 * datumpeg.analysis.conform.Conformance#probabilityOfMaximum}. Worked: offsets 0, 6, 6, 0 mm at
 * equal steps are 6 mm off the chord, and 3 mm off the best line, which lies 3 mm out.
 */
public final class StraightLine {
  /** How limits and outcomes name it. */
  public static final String CHECK = "straightness";

  private static final int FEWEST = 3;
  private static final int WORST_TOLD = 3;

  private final List<Place> places;

  /**
   * @param places at least 3, in order along the row, the first and the last being its ends
   */
  public StraightLine(List<Place> places) {
    if (places.size() < FEWEST) {
      throw new IllegalArgumentException(
          "straightness: " + places.size() + " places, expected at least " + FEWEST);
    }
    this.places = List.copyOf(places);
  }

  /**
   * A place of the row.
   *
   * @param offset from any one straight line, all from the same; + = outward
   */
  public record Place(String name, double alongMetres, Linearised offset) {}

  /** A place with what it lies beside a line. */
  private record Off(String name, Linearised deviation) {
    double size() {
      return Math.abs(deviation.value());
    }
  }

  /** Both outcomes: from the chord, and from the best line. */
  public List<Outcome> outcomes(String row, OutcomeMaker outcomes, Evidence evidence) {
    return List.of(
        greatest(row + "/chord", offChord(), outcomes, evidence),
        greatest(row + "/best", offBestLine(), outcomes, evidence));
  }

  private Place first() {
    return places.get(0);
  }

  private Place last() {
    return places.get(places.size() - 1);
  }

  private double lengthMetres() {
    return last().alongMetres() - first().alongMetres();
  }

  /** The inner places off the line through the ends. */
  private List<Off> offChord() {
    List<Off> off = new ArrayList<>();
    for (Place place : places.subList(1, places.size() - 1)) {
      double share = (place.alongMetres() - first().alongMetres()) / lengthMetres();
      Linearised chord = first().offset().scaled(1 - share).plus(last().offset().scaled(share));
      off.add(new Off(place.name(), place.offset().minus(chord)));
    }
    return off;
  }

  /** All places off the least squares line. */
  private List<Off> offBestLine() {
    double middle = places.stream().mapToDouble(Place::alongMetres).average().orElseThrow();
    double square = 0;
    for (Place place : places) {
      square += (place.alongMetres() - middle) * (place.alongMetres() - middle);
    }
    Linearised mean = Linearised.mean(places.stream().map(Place::offset).toList());
    Linearised slope =
        Linearised.mean(
                places.stream()
                    .map(place -> place.offset().scaled(place.alongMetres() - middle))
                    .toList())
            .scaled(places.size() / square);
    return places.stream()
        .map(
            place ->
                new Off(
                    place.name(),
                    place.offset().minus(mean).minus(slope.scaled(place.alongMetres() - middle))))
        .toList();
  }

  private Outcome greatest(String target, List<Off> off, OutcomeMaker outcomes, Evidence evidence) {
    List<Off> worstFirst =
        off.stream()
            .sorted(Comparator.comparingDouble((Off one) -> -one.size()).thenComparing(Off::name))
            .toList();
    Estimate leastCertain =
        off.stream()
            .map(one -> one.deviation().estimate())
            .max(Comparator.comparingDouble(Estimate::standardUncertainty))
            .orElseThrow();
    String told =
        worstFirst.stream()
            .limit(WORST_TOLD)
            .map(
                one ->
                    TargetWords.pointNamed(one.name())
                        + " "
                        + LengthDisplay.signed(one.deviation().value() * 1000, 1))
            .collect(Collectors.joining(", "));
    return outcomes.maximum(
        CHECK,
        target,
        worstFirst.get(0).size(),
        leastCertain,
        off.size(),
        lengthMetres(),
        evidence,
        told + " mm, + = outward");
  }
}
