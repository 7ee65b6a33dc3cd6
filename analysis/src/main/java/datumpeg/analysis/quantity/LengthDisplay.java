package datumpeg.analysis.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** How a length is shown to a person: millimetres and metres, or feet, inches and sixteenths. */
public enum LengthDisplay {
  METRIC {
    @Override
    public String dimension(double metres) {
      return decimal(metres * 1000, 0) + " mm";
    }

    @Override
    public String deviation(double metres) {
      return signed(metres * 1000, 1) + " mm";
    }
  },
  IMPERIAL {
    @Override
    public String dimension(double metres) {
      return feetInchesSixteenths(metres);
    }

    @Override
    public String deviation(double metres) {
      return signed(metres / 0.0254, 2) + " in";
    }
  };

  private static final double[] TENS = {1, 10, 100, 1000, 10_000};

  /** Numbers up to here, in units of the last place, need no decimal arithmetic. */
  private static final double PLAIN = 1e9;

  /** So near to a tie the decimal digits of the number decide. */
  private static final double NEAR_A_TIE = 1e-5;

  /** A dimension to be marked or cut, such as {@code 8572 mm} or {@code 28' 1 1/2"}. */
  public abstract String dimension(double metres);

  /** A signed deviation, such as {@code +3.2 mm}. */
  public abstract String deviation(double metres);

  /** A decimal number, half-even, never "-0". */
  public static String decimal(double value, int places) {
    if (places >= 0 && places < TENS.length) {
      double tens = value * TENS[places];
      double below = Math.floor(tens);
      if (Math.abs(tens) < PLAIN && Math.abs(tens - below - 0.5) > NEAR_A_TIE) {
        return plain(tens - below < 0.5 ? (long) below : (long) below + 1, places);
      }
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
  }

  /** A whole number of units of the last place. */
  private static String plain(long units, int places) {
    String digits = Long.toString(Math.abs(units));
    StringBuilder text = new StringBuilder(units < 0 ? "-" : "");
    if (places == 0) {
      return text.append(digits).toString();
    }
    int whole = digits.length() - places;
    text.append(whole > 0 ? digits.substring(0, whole) : "0").append('.');
    return text.append("0".repeat(Math.max(0, -whole)))
        .append(digits.substring(Math.max(0, whole)))
        .toString();
  }

  /** As {@link #decimal}, with a plus sign before positive values. */
  public static String signed(double value, int places) {
    String text = decimal(value, places);
    boolean positive = value > 0 && text.chars().anyMatch(digit -> digit >= '1' && digit <= '9');
    return positive ? "+" + text : text;
  }

  private static String feetInchesSixteenths(double metres) {
    long sixteenths =
        BigDecimal.valueOf(Math.abs(metres) / 0.0254 * 16)
            .setScale(0, RoundingMode.HALF_EVEN)
            .longValueExact();
    long feet = sixteenths / (12 * 16);
    long inches = sixteenths / 16 % 12;
    long part = sixteenths % 16;
    StringBuilder text = new StringBuilder(metres < 0 && sixteenths > 0 ? "-" : "");
    text.append(feet).append("' ").append(inches);
    if (part > 0) {
      long divisor = Long.lowestOneBit(part);
      text.append(' ').append(part / divisor).append('/').append(16 / divisor);
    }
    return text.append('"').toString();
  }
}
