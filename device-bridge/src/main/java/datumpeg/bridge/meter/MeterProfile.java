package datumpeg.bridge.meter;

import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.SerialSettings;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/**
 * How a kind of meter speaks.
 *
 * @param id its name: letters, digits, hyphens
 * @param serial how its serial line is set up unless the link says otherwise
 * @param maximumLineBytes a longer line is dropped and counted
 * @param defaultUnit the unit of a line that names none
 * @param sign whether values are taken as sent
 * @param angleZero what an angle of zero means
 * @param accuracy what the maker states, or null where the profile does not know the instrument
 */
public record MeterProfile(
    String id,
    SerialSettings serial,
    int maximumLineBytes,
    Unit defaultUnit,
    Sign sign,
    AngleZero angleZero,
    @Nullable MeterAccuracy accuracy) {

  /** Whether values are taken as sent. */
  public enum Sign {
    AS_SENT,
    REVERSED
  }

  /** What an angle of zero means. */
  public enum AngleZero {
    /** 0 is plumb. */
    PLUMB,
    /** 0 is level, so that plumb reads 90° or −90°. */
    LEVEL
  }

  public MeterProfile {
    if (!id.matches("[A-Za-z0-9-]{1,64}")) {
      throw new IllegalArgumentException(
          "a profile's id is 1 to 64 letters, digits or hyphens, found '" + id + "'");
    }
    if (maximumLineBytes < 1) {
      throw new IllegalArgumentException(
          "the longest line must be at least 1 byte, found " + maximumLineBytes);
    }
  }

  /**
   * The value of a line under this profile's conventions, in metres or radians; angles from plumb.
   */
  public double valueSi(Measured measured) {
    double value = measured.siValue();
    if (measured.dimension() == Dimension.ANGLE && angleZero == AngleZero.LEVEL) {
      value -= StrictMath.copySign(StrictMath.PI / 2, value);
    }
    return sign == Sign.REVERSED ? -value : value;
  }

  /** The profile as text, one property a line in a fixed order: equal profiles, equal text. */
  public String canonicalText() {
    return String.join(
        "\n",
        "id = " + id,
        "framing = text-line",
        "decoding = general-text-line",
        "baud = " + serial.baud(),
        "data_bits = " + serial.dataBits(),
        "parity = " + serial.parity().letter(),
        "stop_bits = " + serial.stopBits().number(),
        "maximum_line_bytes = " + maximumLineBytes,
        "default_unit = " + defaultUnit.symbol(),
        "sign = " + sign,
        "angle_zero = " + angleZero,
        "accuracy = " + accuracyText(),
        "");
  }

  // Joined, not formatted: the identity must not depend on the digits of the machine's language.
  private String accuracyText() {
    if (accuracy == null) {
      return "unknown";
    }
    return "repeatability "
        + accuracy.repeatability()
        + ", common "
        + accuracy.common()
        + ", per_metre "
        + accuracy.perMetre()
        + ", resolution "
        + accuracy.resolution();
  }

  /** {@code id@sha256} over the {@link #canonicalText}: what a capture and a record name. */
  public String identity() {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest(canonicalText().getBytes(StandardCharsets.UTF_8));
      return id + "@" + HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java platform has SHA-256", impossible);
    }
  }
}
