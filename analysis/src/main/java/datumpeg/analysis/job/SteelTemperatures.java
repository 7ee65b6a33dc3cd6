package datumpeg.analysis.job;

import java.util.Collections;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * How warm the steel was when it was measured. A drawing gives lengths at 20 °C (ISO 1, standard
 * reference temperature).
 *
 * @param lowestCelsius where nobody read it: it was no colder
 * @param highestCelsius and no warmer
 * @param withinKelvin a temperature that was read holds for all the steel to this much either way
 * @param readCelsius by stage, where it was read
 */
public record SteelTemperatures(
    double lowestCelsius,
    double highestCelsius,
    double withinKelvin,
    Map<String, Double> readCelsius) {
  /** ISO 1. */
  public static final double REFERENCE_CELSIUS = 20;

  /** Of steel, for each kelvin: EN 1993-1-1 3.2.6 (from memory: verify against your copy). */
  public static final double EXPANSION_PER_KELVIN = 12e-6;

  /** Where the job says nothing (our choice): from a cold morning to sun on the steel. */
  public static final SteelTemperatures UNKNOWN = new SteelTemperatures(5, 35, 3, Map.of());

  /** Steel that is at 20 °C throughout. */
  public static final SteelTemperatures REFERENCE = new SteelTemperatures(20, 20, 0, Map.of());

  private static final double COLDEST_CELSIUS = -60;
  private static final double HOTTEST_CELSIUS = 100;

  /**
   * @throws IllegalArgumentException for a range the wrong way round, a negative width, or a
   *     temperature no site has
   */
  public SteelTemperatures {
    readCelsius = Collections.unmodifiableMap(new TreeMap<>(readCelsius));
    if (!(lowestCelsius <= highestCelsius) || !(withinKelvin >= 0)) {
      throw new IllegalArgumentException(
          "Steel from "
              + lowestCelsius
              + " to "
              + highestCelsius
              + " degC, read within "
              + withinKelvin
              + " K; expected the lower first and 0 or more.");
    }
    requireOnSite(lowestCelsius);
    requireOnSite(highestCelsius);
    readCelsius.values().forEach(SteelTemperatures::requireOnSite);
  }

  private static void requireOnSite(double celsius) {
    if (!(celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS)) {
      throw new IllegalArgumentException(
          "Steel at "
              + celsius
              + " degC; expected from "
              + COLDEST_CELSIUS
              + " to "
              + HOTTEST_CELSIUS
              + " degC.");
    }
  }

  public OptionalDouble read(String stage) {
    Double celsius = readCelsius.get(stage);
    return celsius == null ? OptionalDouble.empty() : OptionalDouble.of(celsius);
  }

  /** How much longer each metre of steel was at a stage than at 20 °C: the best guess. */
  public double strain(String stage) {
    double celsius = read(stage).orElse((lowestCelsius + highestCelsius) / 2);
    return EXPANSION_PER_KELVIN * (celsius - REFERENCE_CELSIUS);
  }

  /**
   * Its standard uncertainty: half a width over √3, as all between is as likely (JCGM 100, 4.3.7).
   */
  public double strainUncertainty(String stage) {
    double halfWidth =
        read(stage).isPresent() ? withinKelvin : (highestCelsius - lowestCelsius) / 2;
    return EXPANSION_PER_KELVIN * halfWidth / Math.sqrt(3);
  }
}
