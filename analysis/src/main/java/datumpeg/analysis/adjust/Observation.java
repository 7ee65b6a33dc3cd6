package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireFinite;
import static datumpeg.analysis.adjust.Door.requireName;
import static datumpeg.analysis.adjust.Door.requirePositive;

import java.util.ArrayList;
import java.util.List;

/**
 * One observed value with its accuracy: an independent part, and the errors it shares with others.
 *
 * @param id names the observation in results and messages; distinct within one adjustment
 * @param observed in the unit of the network that takes it: metres, or radians for tilts
 * @param independentStandardUncertainty of this value alone, same unit, above 0
 * @param commonParts shared errors; none if the list is empty
 */
public record Observation(
    String id,
    double observed,
    double independentStandardUncertainty,
    List<CommonPart> commonParts) {
  public Observation {
    requireName("observation", id);
    requireFinite("observation", id, "observed value", observed);
    requirePositive(
        "observation", id, "independent standard uncertainty", independentStandardUncertainty);
    commonParts = List.copyOf(commonParts);
  }

  /** An observation that shares no error with others. */
  public static Observation independent(String id, double observed, double standardUncertainty) {
    return new Observation(id, observed, standardUncertainty, List.of());
  }

  /** Independent and common parts together, the groups being independent of each other. */
  public double standardUncertainty() {
    double variance = independentStandardUncertainty * independentStandardUncertainty;
    for (int i = 0; i < commonParts.size(); i++) {
      String group = commonParts.get(i).group();
      if (!isNamedBefore(i, group)) {
        variance += effect(group) * effect(group);
      }
    }
    return Math.sqrt(variance);
  }

  private boolean isNamedBefore(int end, String group) {
    for (int i = 0; i < end; i++) {
      if (commonParts.get(i).group().equals(group)) {
        return true;
      }
    }
    return false;
  }

  /** Effect of one shared error on this observation; 0 if it does not answer to it. */
  public double effect(String group) {
    double sum = 0;
    for (CommonPart part : commonParts) {
      if (part.group().equals(group)) {
        sum += part.effect();
      }
    }
    return sum;
  }

  /** The same observation with one more shared error. */
  public Observation withCommonPart(CommonPart part) {
    List<CommonPart> parts = new ArrayList<>(commonParts);
    parts.add(part);
    return new Observation(id, observed, independentStandardUncertainty, parts);
  }
}
