package datumpeg.analysis.adjust;

/**
 * An observed difference of position along a line: position of {@code to} less that of {@code
 * from}.
 *
 * @param observation in metres, signed; known offsets (a face, a hook) already taken off
 */
public record LineDifference(String from, String to, Observation observation) {
  public LineDifference {
    if (from.equals(to)) {
      throw new IllegalArgumentException(
          "line difference "
              + observation.id()
              + ": both ends are "
              + from
              + ", expected two stations");
    }
  }
}
