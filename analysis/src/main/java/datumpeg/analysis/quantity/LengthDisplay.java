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

  /** A dimension to be marked or cut, such as {@code 8572 mm} or {@code 28' 1 1/2"}. */
  public abstract String dimension(double metres);

  /** A signed deviation, such as {@code +3.2 mm}. */
  public abstract String deviation(double metres);

  /** A decimal number, half-even, never "-0". */
  public static String decimal(double value, int places) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
  }

  /** As {@link #decimal}, with a plus sign before positive values. */
  public static String signed(double value, int places) {
    String text = decimal(value, places);
    return text.startsWith("-") || new BigDecimal(text).signum() == 0 ? text : "+" + text;
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
