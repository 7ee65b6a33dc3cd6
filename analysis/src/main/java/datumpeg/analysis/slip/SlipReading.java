package datumpeg.analysis.slip;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.analysis.measuring.WrittenValue;
import datumpeg.analysis.quantity.LengthDisplay;
import java.util.Optional;

/**
 * One reading as the search sees it.
 *
 * @param id the same as that of its observation in the network
 * @param value metres or radians, as read
 * @param face 1 or 2 for a tilt read on two faces, else 0
 * @param set what was read in one go: one meter, session and set-up
 * @param written as received or typed, if known
 * @param sign change of the observation for a change of the reading: -1 for a staff, which counts
 *     down where the network counts up; else 1
 */
public record SlipReading(
    String id,
    Target target,
    double value,
    int face,
    String set,
    Optional<WrittenValue> written,
    int sign) {
  public SlipReading {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(
          "slip search: reading " + id + " is " + value + ", expected a finite number");
    }
    if (sign != 1 && sign != -1) {
      throw new IllegalArgumentException(
          "slip search: reading " + id + " has sign " + sign + ", expected 1 or -1");
    }
  }

  /** A reading of the record. */
  public static SlipReading of(Reading reading) {
    return new SlipReading(
        reading.id(),
        reading.target(),
        reading.valueSi(),
        reading.face(),
        reading.meter() + "|" + reading.setupOrSession(),
        reading.written(),
        reading.target().quantity() == MeasuredQuantity.STAFF ? -1 : 1);
  }

  /** What was read, for a person. */
  String targetWords() {
    return TargetWords.of(target);
  }

  /** Whether it is an angle, and not a length. */
  public boolean isTilt() {
    return target.quantity() == MeasuredQuantity.TILT;
  }

  /** Whether it is a level: a height or a staff. */
  boolean isLevel() {
    return target.quantity() == MeasuredQuantity.HEIGHT
        || target.quantity() == MeasuredQuantity.STAFF;
  }

  /** A value of this reading's kind for a person: millimetres, or degrees for a tilt. */
  String shown(double si) {
    return isTilt()
        ? LengthDisplay.decimal(StrictMath.toDegrees(si), 3) + " deg"
        : LengthDisplay.decimal(si * 1000, 1) + " mm";
  }

  /** A difference of such values, with its sign. */
  String shownDifference(double si) {
    return isTilt()
        ? LengthDisplay.signed(StrictMath.toDegrees(si), 3) + " deg"
        : LengthDisplay.signed(si * 1000, 1) + " mm";
  }
}
