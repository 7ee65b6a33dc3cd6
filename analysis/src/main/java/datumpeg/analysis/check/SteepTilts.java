package datumpeg.analysis.check;

import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.quantity.LengthDisplay;
import java.util.List;

/**
 * Tilts that nothing that stands has: nearer to level than to plumb, as read with a meter that
 * counts from level. They are doubted, whether or not anything contradicts them.
 */
public final class SteepTilts {
  /** Half way from plumb to level. */
  private static final double FARTHEST_DEGREES = 45;

  private SteepTilts() {}

  /** A note for each of some tilts that is one. */
  public static List<Note> of(List<Reading> tilts) {
    return tilts.stream()
        .filter(tilt -> degrees(tilt) > FARTHEST_DEGREES)
        .map(SteepTilts::note)
        .toList();
  }

  private static double degrees(Reading tilt) {
    return Math.abs(StrictMath.toDegrees(tilt.valueSi()));
  }

  private static Note note(Reading tilt) {
    return new Note(
        Note.Kind.SLIP_SUSPECTED,
        "Nothing that stands leans as far as "
            + TargetWords.of(tilt.target())
            + " reads, "
            + LengthDisplay.decimal(degrees(tilt), 2)
            + " deg. If the meter counts from level, it is "
            + LengthDisplay.decimal(90 - degrees(tilt), 2)
            + " deg off plumb. Nothing was dropped; read it again and void the wrong one.",
        List.of(tilt.id()));
  }
}
