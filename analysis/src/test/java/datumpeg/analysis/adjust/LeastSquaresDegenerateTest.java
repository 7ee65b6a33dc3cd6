package datumpeg.analysis.adjust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is missing, empty, far apart in weight, or no observation at all. */
final class LeastSquaresDegenerateTest {
  private static Fit fit(LinearModel model) {
    return LeastSquares.adjust(model).complete().orElseThrow();
  }

  @Test
  void namesTheUnknownsThatAreNotDetermined() {
    List<String> unknowns = List.of("a", "b", "c", "d");
    Undetermined<?> result =
        assertInstanceOf(
            Undetermined.class,
            LeastSquares.adjust(
                new LinearModel(
                    unknowns,
                    List.of(
                        equation("1", Map.of("a", 1.0)),
                        equation("2", Map.of("b", 1.0, "c", 1.0)),
                        equation("3", Map.of("b", 2.0, "c", 2.0)),
                        equation("4", Map.of("a", 2.0)),
                        equation("5", Map.of("b", 1.0, "c", 1.0))))));
    assertEquals(List.of("b", "c", "d"), result.names());
    assertTrue(result.reason().contains("b, c, d"));
    assertTrue(result.complete().isEmpty());
  }

  private static ObservationEquation equation(String id, Map<String, Double> coefficients) {
    return new ObservationEquation(Observation.independent(id, 1, 1), coefficients, 0);
  }

  @Test
  void withoutObservationsNothingIsDetermined() {
    Undetermined<?> result =
        assertInstanceOf(
            Undetermined.class, LeastSquares.adjust(new LinearModel(List.of("a", "b"), List.of())));
    assertEquals(List.of("a", "b"), result.names());
  }

  @Test
  void withoutUnknownsOnlyResidualsRemain() {
    Fit fit =
        fit(new LinearModel(List.of(), List.of(equation("1", Map.of()), equation("2", Map.of()))));
    assertEquals(2, fit.degreesOfFreedom());
    assertEquals(-1, fit.observation("1").residual());
    assertEquals(2, fit.test().orElseThrow().squareSum(), 1e-15);
    assertEquals(0, fit(new LinearModel(List.of(), List.of())).degreesOfFreedom());
  }

  @Test
  void withoutRedundancyNothingIsTestedAndEveryObservationIsUnchecked() {
    Fit fit = fit(new LinearModel(List.of("a"), List.of(equation("1", Map.of("a", 2.0)))));
    assertTrue(fit.test().isEmpty());
    assertTrue(fit.suspectedSlip(0.5).isEmpty());
    AdjustedObservation one = fit.observation("1");
    assertFalse(one.checked());
    assertTrue(one.smallestDetectableSlip().isEmpty());
    assertTrue(one.standardizedResidual().isEmpty());
    assertEquals(0, one.residual(), 1e-15);
    assertEquals(0.5, fit.parameters().value("a"), 1e-15);
  }

  @Test
  void weightsFarApartDoNotMakeAnUnknownUndetermined() {
    ObservationEquation sharp =
        new ObservationEquation(Observation.independent("s", 1, 1e-9), Map.of("a", 1.0), 0);
    ObservationEquation blunt =
        new ObservationEquation(
            Observation.independent("t", 3, 1e3), Map.of("a", 1.0, "b", 1.0), 0);
    Fit fit = fit(new LinearModel(List.of("a", "b"), List.of(sharp, blunt)));
    // twelve powers of ten between the weights cost digits, but nothing that counts beside 1e3
    assertEquals(2, fit.parameters().value("b"), 1e-3);
    assertEquals(1e3, fit.parameters().estimate("b").standardUncertainty(), 1e-6);
  }

  @Test
  void refusesWhatIsNoObservation() {
    assertThrows(IllegalArgumentException.class, () -> Observation.independent("a", Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> Observation.independent("a", 1, 0));
    assertThrows(IllegalArgumentException.class, () -> Observation.independent("a", 1, -1));
    assertThrows(IllegalArgumentException.class, () -> Observation.independent(" ", 1, 1));
    assertThrows(
        IllegalArgumentException.class, () -> new CommonPart("g", Double.POSITIVE_INFINITY));
    IllegalArgumentException named =
        assertThrows(
            IllegalArgumentException.class,
            () -> Observation.independent("slab.A1-slab.A4", Double.NaN, 1));
    assertTrue(named.toString().contains("slab.A1-slab.A4"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new LinearModel(List.of("a"), List.of(equation("1", Map.of("b", 1.0)))));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new LinearModel(
                List.of("a"), List.of(equation("1", Map.of("a", 1.0)), equation("1", Map.of()))));
    assertThrows(IllegalArgumentException.class, () -> equation("1", Map.of("a", Double.NaN)));
  }

  @Test
  void totalUncertaintyAddsEffectsOfOneGroupBeforeSquaring() {
    Observation observation =
        new Observation(
            "a",
            1,
            3,
            List.of(new CommonPart("g", 1), new CommonPart("g", 3), new CommonPart("h", 12)));
    assertEquals(13, observation.standardUncertainty(), 1e-12);
  }
}
