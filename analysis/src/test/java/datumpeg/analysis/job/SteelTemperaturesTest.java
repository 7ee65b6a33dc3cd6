package datumpeg.analysis.job;

import static datumpeg.analysis.measuring.MeasuredQuantity.DISTANCE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.reduce.InventedJob;
import datumpeg.analysis.reduce.StageFindings;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SteelTemperaturesTest {
  private static SteelTemperatures read(double celsius) {
    return new SteelTemperatures(5, 35, 3, Map.of("tightening", celsius));
  }

  private static InventedJob job(SteelTemperatures steel) {
    InventedJob job = new InventedJob().meter("laser", DISTANCE, 0.001, 0);
    job.limit("frame-spacing", 0.010).limit("clear-span", 0.010);
    job.steel = steel;
    return job.read("tightening", DISTANCE, "eave.A1-eave.A2", 5.970)
        .read("tightening", DISTANCE, "eave.A1-eave.B1", 8.572)
        .read("tightening", DISTANCE, "base.A1-base.A2", 5.968)
        .read("tightening", DISTANCE, "base.A1-base.B1", 8.572);
  }

  private static Outcome outcome(InventedJob job, String check, String target) {
    return job.reduced("tightening").outcome(check, target).orElseThrow();
  }

  /** Handbook arithmetic: 30 m · 20 K · 12e-6 = 7.20 mm; 12 m · 15 K · 12e-6 = 2.16 mm. */
  @Test
  void steelLengthensByTwelveMicrometresAMetreAndKelvin() {
    assertEquals(7.20e-3, 30 * read(40).strain("tightening"), 1e-12);
    assertEquals(2.16e-3, 12 * read(35).strain("tightening"), 1e-12);
    assertEquals(0, SteelTemperatures.UNKNOWN.strain("lift"), 0);
  }

  /** All temperatures of a range as likely: half of 30 K over √3 (JCGM 100, 4.3.7). */
  @Test
  void anUnknownTemperatureIsAsUncertainAsItsRange() {
    assertEquals(
        12e-6 * 15 / Math.sqrt(3), SteelTemperatures.UNKNOWN.strainUncertainty("lift"), 1e-18);
    assertEquals(12e-6 * 3 / Math.sqrt(3), read(10).strainUncertainty("tightening"), 1e-18);
  }

  @Test
  void aKnownTemperatureBringsSteelToTwentyDegrees() {
    Outcome eave = outcome(job(read(35)), "frame-spacing", "A1-A2/eave");
    double nominal = eave.nominal().orElseThrow();
    assertEquals(5.970 - nominal * 12e-6 * 15, eave.measured(), 1e-9);
    assertTrue(eave.aside().contains("brought from 35 °C to 20 °C by 1.1 ± 0.2 mm"), eave.aside());
  }

  @Test
  void feetOnConcreteAreLeftAlone() {
    Outcome cold = outcome(job(read(-10)), "frame-spacing", "A1-A2/base");
    Outcome unknown = outcome(job(SteelTemperatures.UNKNOWN), "frame-spacing", "A1-A2/base");
    Outcome reference = outcome(job(SteelTemperatures.REFERENCE), "frame-spacing", "A1-A2/base");
    assertEquals(reference, cold);
    assertEquals(reference, unknown);
  }

  /** u² = 1² + (8.572 · 12e-6 · 15 000 / √3)² mm². */
  @Test
  void anUnknownTemperatureWidensWhatIsKnownOfSteel() {
    InventedJob job = job(SteelTemperatures.UNKNOWN);
    Outcome span = outcome(job, "clear-span", "1/eave");
    double added = 8.572 * 12e-6 * 15 / Math.sqrt(3);
    assertEquals(2 * Math.sqrt(1e-6 + added * added), span.expandedUncertainty(), 1e-9);
    assertEquals(8.572, span.measured(), 1e-9);
    StageFindings stage = job.reduced("tightening");
    assertEquals(
        1,
        stage.notes().stream()
            .filter(note -> note.kind() == Note.Kind.ASSUMED)
            .filter(note -> note.text().contains("between 5 and 35 °C"))
            .filter(note -> note.text().contains("[stages.tightening]"))
            .count());
  }

  /** One temperature for all readings of a stage: reading again does not tell it. */
  @Test
  void repeatsDoNotShrinkWhatTheTemperatureAdds() {
    InventedJob job = job(SteelTemperatures.UNKNOWN);
    for (int i = 0; i < 99; i++) {
      job.read("tightening", DISTANCE, "eave.A1-eave.B1", 8.572);
    }
    double added = 2 * 8.572 * 12e-6 * 15 / Math.sqrt(3);
    double u = outcome(job, "clear-span", "1/eave").expandedUncertainty();
    assertTrue(u > added && u < added * 1.02, u + " " + added);
  }

  /** A door post apart from the next by a hand: the temperature is nothing there. */
  @Test
  void aShortLengthHardlyKnowsTheTemperature() {
    assertTrue(0.1 * SteelTemperatures.UNKNOWN.strainUncertainty("lift") < 0.00002);
  }

  @Test
  void temperaturesNoSiteHasAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new SteelTemperatures(30, 5, 3, Map.of()));
    assertThrows(IllegalArgumentException.class, () -> new SteelTemperatures(5, 35, -1, Map.of()));
    assertThrows(IllegalArgumentException.class, () -> read(293));
    assertThrows(IllegalArgumentException.class, () -> read(Double.NaN));
  }
}
