package datumpeg.analysis.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.conform.DecisionRule;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.simulate.NormalDraws;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeterCheckTest {
  private static final Meter LASER =
      new Meter(
          "laser",
          MeasuredQuantity.DISTANCE,
          new MeterAccuracy(0.0005, 0.0006, 0.00005, 0),
          "test");

  private static MeterCheck check(CheckMethod method, Map<String, List<Double>> values) {
    return MeterCheck.of(new CheckValues(method, values), LASER, DecisionRule.DEFAULT);
  }

  private static MeterCheck known(double... readings) {
    List<Double> all = new ArrayList<>();
    for (double reading : readings) {
      all.add(reading);
    }
    return check(
        CheckMethod.KNOWN_DISTANCE,
        Map.of("known", List.of(12.0), "known-uncertainty", List.of(0.0004), "reading", all));
  }

  @Test
  void theLimitIsWhatOneReadingMayBeOffAtThatLength() {
    MeterCheck found = known(12.001, 12.002, 12.003, 12.002);
    assertEquals(0.002, found.error().value(), 1e-12);
    // By hand: √(0.5²/4 + 0.2²) = 0.3202 mm; 2·√(0.5² + 0.6² + (0.05·12)²) = 1.9698 mm.
    assertEquals(0.00032016, found.error().standardUncertainty(), 1e-8);
    assertEquals(0.0019698, found.limit(), 1e-7);
    // Φ((1.9698 − 2)/0.32016) = Φ(−0.0943) = 0.4624 (table of the normal distribution).
    assertEquals(0.4624, found.probability(), 1e-3);
    assertEquals(Verdict.UNDECIDED, found.verdict());
  }

  @ParameterizedTest
  @CsvSource({"12.0002, CONFORMING", "12.0045, NONCONFORMING", "11.9955, NONCONFORMING"})
  void theVerdictIsDecidedByItsProbability(double reading, Verdict verdict) {
    assertEquals(verdict, known(reading, reading, reading).verdict());
  }

  @Test
  void threePointsInALineHoldTheZeroConstantOnce() {
    // True 5 and 7 m, each reading too long by 4 mm: the constant, whatever the lengths.
    MeterCheck found =
        check(
            CheckMethod.ZERO_CONSTANT,
            Map.of("AB", List.of(5.004), "BC", List.of(7.004), "AC", List.of(12.004)));
    assertEquals(0.004, found.error().value(), 1e-12);
    assertEquals(0.0005 * Math.sqrt(3), found.error().standardUncertainty(), 1e-12);
    assertEquals(Verdict.NONCONFORMING, found.verdict());
  }

  @Test
  void twoPegsHoldTheTiltOfTheLineOfSight() {
    // Heights of the pegs differ by 0.1 m; the line of sight rises 0.2 mm a metre.
    double rise = 0.0002;
    MeterCheck found =
        check(
            CheckMethod.TWO_PEG,
            Map.of(
                "middle-P", List.of(1.5 + 15 * rise),
                "middle-Q", List.of(1.4 + 15 * rise),
                "near-P", List.of(1.62 + 2 * rise),
                "near-Q", List.of(1.52 + 32 * rise),
                "sight-P", List.of(2.0),
                "sight-Q", List.of(32.0)));
    assertEquals(30, found.lengthMetres(), 1e-12);
    assertEquals(30 * rise, found.error().value(), 1e-12);
    assertEquals(0.001, found.error().standardUncertainty(), 1e-12);
  }

  /**
   * A published exercise (unipeppa.com, "problem solved 2-1", two-peg test): from the middle A
   * reads 1.283 and B 0.860; 5 m beyond B, which is 50 m from A, they read 1.612 and 1.219. The
   * line of sight falls 0.030 m in 50 m; A is corrected to 1.645.
   */
  @Test
  void twoPegsOfAPublishedExercise() {
    MeterCheck found =
        check(
            CheckMethod.TWO_PEG,
            Map.of(
                "middle-P", List.of(1.283),
                "middle-Q", List.of(0.860),
                "near-P", List.of(1.612),
                "near-Q", List.of(1.219),
                "sight-P", List.of(55.0),
                "sight-Q", List.of(5.0)));
    assertEquals(-0.030, found.error().value(), 1e-12);
    assertEquals(50, found.lengthMetres(), 1e-12);
    double perMetre = found.error().value() / found.lengthMetres();
    assertEquals(-0.0006, perMetre, 1e-12);
    assertEquals(1.645, 1.612 - perMetre * 55, 1e-12);
    assertEquals(1.222, 1.219 - perMetre * 5, 1e-12);
    assertEquals(1.283 - 0.860, 1.645 - 1.222, 1e-12);
  }

  /** 10.0035 + 20.0040 − 30.0020 = 5.5 mm (arithmetic of three distances on a line). */
  @Test
  void threePointsInALineOfTensOfMetres() {
    MeterCheck found =
        check(
            CheckMethod.ZERO_CONSTANT,
            Map.of("AB", List.of(10.0035), "BC", List.of(20.0040), "AC", List.of(30.0020)));
    assertEquals(0.0055, found.error().value(), 1e-12);
  }

  /** +0.32° and −0.18°: zero error 0.07° (by hand). */
  @Test
  void facesOfATiltMeterInDegrees() {
    MeterCheck found =
        check(CheckMethod.REVERSAL, Map.of("face-1", List.of(0.32), "face-2", List.of(-0.18)));
    assertEquals(0.07, found.error().value(), 1e-12);
  }

  @Test
  void facesOfATiltMeterHoldItsZeroError() {
    MeterCheck found =
        check(CheckMethod.REVERSAL, Map.of("face-1", List.of(0.012), "face-2", List.of(-0.008)));
    assertEquals(0.002, found.error().value(), 1e-12);
    assertEquals(0.0005 / Math.sqrt(2), found.error().standardUncertainty(), 1e-12);
  }

  @Test
  void readingsThatScatterMoreThanStatedAreSaid() {
    assertTrue(known(12.000, 12.0005, 11.9995).scatterProbability().getAsDouble() > 0.3);
    assertTrue(known(12.000, 12.003, 11.997).scatterProbability().getAsDouble() < 0.001);
    assertTrue(known(12.0).scatterProbability().isEmpty());
  }

  /** A meter exactly at its limit is called outside as often as the rule permits, no more. */
  @Test
  void aMeterWithinItsAccuracyIsSeldomCalledOutside() {
    double limit = known(12.0, 12.0, 12.0).limit();
    NormalDraws draws = new NormalDraws(20260302L);
    int outside = 0;
    int rounds = 4000;
    for (int i = 0; i < rounds; i++) {
      double shift = 12 + limit + 0.0002 * draws.next();
      MeterCheck found =
          known(
              shift + 0.0005 * draws.next(),
              shift + 0.0005 * draws.next(),
              shift + 0.0005 * draws.next());
      outside += found.verdict() == Verdict.NONCONFORMING ? 1 : 0;
    }
    // 5 % by the rule; three standard deviations of the count are 1 %.
    assertEquals(0.05, (double) outside / rounds, 0.0104);
  }

  @Test
  void valuesThatDoNotBelongAreRefused() {
    for (Map<String, List<Double>> wrong :
        List.<Map<String, List<Double>>>of(
            Map.of(),
            Map.of("AB", List.of(5.0), "BC", List.of(7.0)),
            Map.of("AB", List.of(5.0), "BC", List.of(7.0), "AC", List.of()),
            Map.of("AB", List.of(5.0), "BC", List.of(7.0), "AC", List.of(Double.NaN)),
            Map.of(
                "AB", List.of(5.0), "BC", List.of(7.0), "AC", List.of(12.0), "AD", List.of(1.0)))) {
      assertThrows(
          IllegalArgumentException.class, () -> new CheckValues(CheckMethod.ZERO_CONSTANT, wrong));
    }
    Map<String, List<Double>> twice = Map.of("known", List.of(1.0, 2.0), "reading", List.of(1.0));
    assertThrows(
        IllegalArgumentException.class, () -> new CheckValues(CheckMethod.KNOWN_DISTANCE, twice));
  }
}
