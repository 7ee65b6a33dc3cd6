package datumpeg.bridge.meter;

import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.SerialSettings;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a kind of meter speaks.
 *
 * @param id its name: letters, digits, hyphens
 * @param serial how its serial line is set up unless the link says otherwise
 * @param language what its bytes are
 * @param sign whether values are taken as sent
 * @param angleZero what an angle of zero means
 * @param accuracy what the maker states, or null where the profile does not know the instrument
 */
public record MeterProfile(
    String id,
    SerialSettings serial,
    MeterLanguage language,
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
    List<String> ofLanguage = language.canonicalLines();
    List<String> lines = new ArrayList<>(List.of("id = " + id));
    lines.addAll(ofLanguage.subList(0, 2));
    lines.add("baud = " + serial.baud());
    lines.add("data_bits = " + serial.dataBits());
    lines.add("parity = " + serial.parity().letter());
    lines.add("stop_bits = " + serial.stopBits().number());
    lines.addAll(ofLanguage.subList(2, ofLanguage.size()));
    lines.add("sign = " + sign);
    lines.add("angle_zero = " + angleZero);
    lines.add("accuracy = " + accuracyText());
    return String.join("\n", lines) + "\n";
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
