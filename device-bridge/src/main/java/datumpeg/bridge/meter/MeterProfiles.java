package datumpeg.bridge.meter;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.TextLineFramer;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;

/** The profiles that come with the program. */
public final class MeterProfiles {
  /** A meter that sends one value a line as text; used where no profile is named. */
  public static final MeterProfile GENERAL_TEXT_LINE =
      new MeterProfile(
          "general-text-line",
          SerialSettings.DEFAULT,
          TextLineFramer.DEFAULT_MAXIMUM_LINE_BYTES,
          Unit.METRE,
          Sign.AS_SENT,
          AngleZero.PLUMB,
          null);

  private MeterProfiles() {}

  /**
   * The profile of this name.
   *
   * @throws InputException if there is none
   */
  public static MeterProfile named(String id) {
    if (GENERAL_TEXT_LINE.id().equals(id)) {
      return GENERAL_TEXT_LINE;
    }
    throw new InputException(
        "There is no meter profile '%s'; known: %s.".formatted(id, GENERAL_TEXT_LINE.id()));
  }
}
