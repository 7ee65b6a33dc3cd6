package datumpeg.bridge.meter;

import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.SerialSettings;
import java.math.BigDecimal;
import java.math.RoundingMode;
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
 * @param instrument what it measures and how accurately, or null where the profile does not know
 * @param trigger the bytes that make the meter measure; none if it cannot be told to
 */
public record MeterProfile(
    String id,
    SerialSettings serial,
    MeterLanguage language,
    Sign sign,
    AngleZero angleZero,
    @Nullable Meter instrument,
    Bytes trigger) {

  /** A profile of a meter that cannot be told to measure. */
  public MeterProfile(
      String id,
      SerialSettings serial,
      MeterLanguage language,
      Sign sign,
      AngleZero angleZero,
      @Nullable Meter instrument) {
    this(id, serial, language, sign, angleZero, instrument, Bytes.empty());
  }

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

  /** Far below what any meter tells apart, and short enough to be written in a table. */
  private static final int MOST_DECIMALS = 12;

  public MeterProfile {
    if (!id.matches("[A-Za-z0-9-]{1,64}")) {
      throw new IllegalArgumentException(
          "a profile's id is 1 to 64 letters, digits or hyphens, found '" + id + "'");
    }
  }

  /**
   * What a line says under this profile's conventions: angles from plumb, signs as we have them.
   */
  public Measured read(Measured sent) {
    Measured zeroed =
        sent.dimension() == Dimension.ANGLE && angleZero == AngleZero.LEVEL
            ? fromPlumb(sent)
            : sent;
    return sign == Sign.REVERSED ? negated(zeroed) : zeroed;
  }

  /** What {@link #read} comes to, in metres or radians. */
  public double valueSi(Measured sent) {
    return read(sent).siValue();
  }

  private static Measured fromPlumb(Measured sent) {
    double plumb = StrictMath.copySign(StrictMath.PI / 2, sent.siValue());
    if (sent.unit() == Unit.DEGREE) {
      BigDecimal ninety = BigDecimal.valueOf(plumb > 0 ? 90 : -90);
      return measured(new BigDecimal(number(sent)).subtract(ninety), Unit.DEGREE);
    }
    // From level, plumb is no number of mm/m or %: the angle itself is told, in radians.
    BigDecimal angle = BigDecimal.valueOf(sent.siValue() - plumb);
    return measured(angle.setScale(MOST_DECIMALS, RoundingMode.HALF_EVEN), Unit.RADIAN);
  }

  private static Measured negated(Measured sent) {
    if (sent.unit() == Unit.FOOT_AND_INCH) {
      boolean below = sent.valueText().startsWith("-");
      String text = below ? sent.valueText().substring(1) : "-" + sent.valueText();
      return new Measured(text, sent.unit(), 0.0 - sent.siValue());
    }
    return measured(new BigDecimal(number(sent)).negate(), sent.unit());
  }

  private static Measured measured(BigDecimal value, Unit unit) {
    return new Measured(value.toPlainString(), unit, unit.toSi(value.doubleValue()) + 0.0);
  }

  private static String number(Measured sent) {
    return sent.valueText().replace(',', '.');
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
    if (!trigger.isEmpty()) {
      lines.add("trigger = " + trigger.hex());
    }
    return String.join("\n", lines) + "\n";
  }

  // Joined, not formatted: the identity must not depend on the digits of the machine's language.
  private String accuracyText() {
    if (instrument == null) {
      return "unknown";
    }
    MeterAccuracy accuracy = instrument.accuracy();
    return instrument.quantity().text()
        + ": repeatability "
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
    return id + "@" + sha256();
  }

  /** The digest of the {@link #canonicalText}, 64 lower-case hexadecimal digits. */
  public String sha256() {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest(canonicalText().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java platform has SHA-256", impossible);
    }
  }
}
