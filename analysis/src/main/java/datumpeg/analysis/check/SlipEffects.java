package datumpeg.analysis.check;

import java.util.Map;

/**
 * What the readings that contradict others may have moved outcomes by: how far an outcome goes when
 * one of them is left out. An outcome is known no better than that while nobody knows which of them
 * is right. Immutable.
 *
 * @param byOutcome in the outcome's own unit, by {@link #name}; above 0
 */
public record SlipEffects(Map<String, Double> byOutcome) {
  /** Nothing is in doubt. */
  public static final SlipEffects NONE = new SlipEffects(Map.of());

  public SlipEffects {
    byOutcome = Map.copyOf(byOutcome);
  }

  /** How an outcome is called. */
  public static String name(String check, String target) {
    return check + " " + target;
  }

  /** What is in doubt of an outcome; 0 for nothing. */
  public double of(String check, String target) {
    return byOutcome.isEmpty() ? 0 : byOutcome.getOrDefault(name(check, target), 0.0);
  }
}
