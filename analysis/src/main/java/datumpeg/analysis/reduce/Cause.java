package datumpeg.analysis.reduce;

import java.util.List;

/**
 * One thing that is wrong, or too close to call, and all it shows itself by: told once.
 *
 * @param kind nonconforming if anything under it is, else undecided
 * @param sentence what it is, in words and millimetres
 * @param action what to do about it, which way, by how much
 * @param symptoms the outcomes it explains, as check and target joined by a space
 */
public record Cause(
    datumpeg.analysis.conform.Verdict kind, String sentence, String action, List<String> symptoms) {
  public Cause {
    symptoms = List.copyOf(symptoms);
  }
}
