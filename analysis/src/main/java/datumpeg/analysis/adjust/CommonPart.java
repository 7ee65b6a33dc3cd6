package datumpeg.analysis.adjust;

import static datumpeg.analysis.adjust.Door.requireFinite;
import static datumpeg.analysis.adjust.Door.requireName;

import datumpeg.analysis.uncertainty.Origin;

/**
 * How one observation answers to an error it shares with others, for example the zero of one meter
 * in one session. The shared error is one unknown of mean 0 and standard deviation 1.
 *
 * @param group names the shared error; equal names are the same error
 * @param effect change of the observation for one standard deviation of it, signed, in the
 *     observation's unit
 * @param origin what the error comes from
 */
public record CommonPart(String group, double effect, Origin origin) {
  public CommonPart {
    requireName("common part", group);
    requireFinite("common part", group, "effect", effect);
  }

  /** An error of the meter. */
  public CommonPart(String group, double effect) {
    this(group, effect, Origin.METER);
  }
}
