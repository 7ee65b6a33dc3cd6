package datumpeg.analysis.measuring;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One value delivered by a meter or typed by a person, as the analysis sees it.
 *
 * @param id names the reading in the record
 * @param stage the stage it was taken in
 * @param valueSi metres or radians; for an attribute 1 = yes, 0 = no
 * @param face 1 or 2 for a tilt read on two faces, 0 if no face was named
 * @param meter the job's name for the instrument, empty if none was named
 * @param session one opening of the record; a meter has one common error a session
 * @param setup a level's set-up; empty = the session is one set-up
 * @param upMetres height of a tilt meter above the base; empty = mid-height
 * @param round 1 for the first, one more each time a thing of the target was moved
 * @param at when it was taken
 * @param written value and unit as received or typed, if known
 */
public record Reading(
    String id,
    String stage,
    Target target,
    double valueSi,
    int face,
    String meter,
    String session,
    String setup,
    OptionalDouble upMetres,
    int round,
    Instant at,
    String operator,
    String note,
    Optional<WrittenValue> written) {

  /**
   * @throws IllegalArgumentException for a value that is not finite, a distance that is not
   *     positive, an unknown face or a round below 1
   */
  public Reading {
    if (!Double.isFinite(valueSi)) {
      throw new IllegalArgumentException(
          "The reading of " + target.text() + " is " + valueSi + "; expected a finite number.");
    }
    if (target.quantity() == MeasuredQuantity.DISTANCE && !(valueSi > 0)) {
      throw new IllegalArgumentException(
          "The distance " + target.text() + " reads " + valueSi + " m; expected more than 0.");
    }
    if (target.quantity() == MeasuredQuantity.TILT && Math.abs(valueSi) >= StrictMath.PI / 2) {
      throw new IllegalArgumentException(
          "The tilt "
              + target.text()
              + " reads "
              + StrictMath.toDegrees(valueSi)
              + " deg; expected less than 90 deg from vertical.");
    }
    if (face < 0 || face > 2) {
      throw new IllegalArgumentException(
          "The reading of " + target.text() + " names face " + face + "; expected 1 or 2.");
    }
    if (round < 1) {
      throw new IllegalArgumentException(
          "The reading of " + target.text() + " names round " + round + "; rounds count from 1.");
    }
  }

  /** A reading of which nobody knows how it was written. */
  public Reading(
      String id,
      String stage,
      Target target,
      double valueSi,
      int face,
      String meter,
      String session,
      String setup,
      OptionalDouble upMetres,
      int round,
      Instant at,
      String operator,
      String note) {
    this(
        id,
        stage,
        target,
        valueSi,
        face,
        meter,
        session,
        setup,
        upMetres,
        round,
        at,
        operator,
        note,
        Optional.empty());
  }

  /** The level set-up it belongs to. */
  public String setupOrSession() {
    return setup.isEmpty() ? session : session + "|" + setup;
  }
}
