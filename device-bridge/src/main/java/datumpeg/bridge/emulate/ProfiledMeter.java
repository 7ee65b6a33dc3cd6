package datumpeg.bridge.emulate;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.LinePattern;
import datumpeg.bridge.frame.LineShape;
import datumpeg.bridge.frame.binary.ByteOrder;
import datumpeg.bridge.frame.binary.FrameShape;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.meter.MeterLanguage.BinaryFrames;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.PatternLines;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterLanguage.TransducerSentences;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;

/**
 * A meter that speaks as a profile says: the way back from {@link MeterProfile#read}. What stands
 * beside the value is drawn anew each time. The same seed gives the same bytes. One thread.
 */
public final class ProfiledMeter {
  private final MeterProfile profile;
  private final Dimension measures;
  private final int decimals;
  private final SplittableRandom random;
  private long sentCount;

  /**
   * @param measures lengths or angles; must be what the profile's unit measures
   * @param decimals how many digits follow the point where numbers are text
   */
  public ProfiledMeter(MeterProfile profile, Dimension measures, int decimals, long seed) {
    this.profile = profile;
    this.measures = measures;
    this.decimals = decimals;
    this.random = new SplittableRandom(seed);
  }

  /** What is sent at once, and on which of the link's channels. */
  public record Sent(String channel, Bytes bytes) {}

  /**
   * The message of one value.
   *
   * @param siValue metres, or radians from plumb
   * @throws IllegalArgumentException if the profile's numbers cannot hold the value
   */
  public Sent send(double siValue) {
    double sent = profile.sign() == Sign.REVERSED ? -siValue : siValue;
    if (profile.language() instanceof TextLines text) {
      return line(number(sent, text.defaultUnit(), 0));
    }
    if (profile.language() instanceof PatternLines pattern) {
      return line(patternLine(pattern.pattern(), sent));
    }
    if (profile.language() instanceof TransducerSentences sentences) {
      return line(sentence(sentences.transducer(), sent));
    }
    if (profile.language() instanceof BinaryFrames frames) {
      return new Sent(Chunk.ONLY_CHANNEL, frame(frames.shape(), sent));
    }
    if (profile.language() instanceof Registers registers) {
      Bytes least = field(registers.value(), sent);
      // The ways of laying a number into registers are their own way back.
      Bytes laid = registers.order().leastSignificantFirst(least.reversed()).reversed();
      return new Sent(registers.block().channel(), laid);
    }
    CharacteristicValues values = (CharacteristicValues) profile.language();
    return new Sent(
        values.characteristic(), filler(values.offset()).plus(field(values.format(), sent)));
  }

  private Sent line(String text) {
    return new Sent(Chunk.ONLY_CHANNEL, Bytes.of((text + "\r\n").getBytes(StandardCharsets.UTF_8)));
  }

  /** The number in a unit, before it is written. */
  private BigDecimal inUnit(double sent, Unit unit, int exponent) {
    double number;
    if (unit.dimension() == Dimension.ANGLE && profile.angleZero() == AngleZero.LEVEL) {
      number = unit.fromSi(sent + StrictMath.copySign(StrictMath.PI / 2, sent));
    } else {
      number = unit.fromSi(sent);
    }
    return BigDecimal.valueOf(number).scaleByPowerOfTen(-exponent);
  }

  private String number(double sent, Unit unit, int exponent) {
    int digits = Math.max(0, decimals + exponent);
    return inUnit(sent, unit, exponent).setScale(digits, RoundingMode.HALF_EVEN).toPlainString();
  }

  private String patternLine(LinePattern pattern, double sent) {
    StringBuilder line = new StringBuilder();
    for (LineShape.Part part : pattern.shape().parts()) {
      if (part instanceof LineShape.Literal literal) {
        line.append(literal.text());
      } else if (part instanceof LineShape.Blank) {
        line.append(' ');
      } else {
        line.append(filled((LineShape.Slot) part, pattern, sent));
      }
    }
    return line.toString();
  }

  private String filled(LineShape.Slot slot, LinePattern pattern, double sent) {
    boolean directed = !pattern.minus().isEmpty();
    return switch (slot) {
      case VALUE ->
          number(directed ? Math.abs(sent) : sent, pattern.unit(), pattern.exponent())
              .replace(".", pattern.decimalMark().text());
      case NUMBER -> Integer.toString(random.nextInt(10, 99));
      case UNIT -> pattern.unit().symbol();
      case WORD -> sentCount++ % 2 == 0 ? "OK" : "LOW";
      case DIRECTION -> sent < 0 ? pattern.minus().get(0) : plus(pattern);
      case REST -> "";
    };
  }

  private static String plus(LinePattern pattern) {
    return pattern.plus().isEmpty() ? "+" : pattern.plus().get(0);
  }

  private String sentence(String transducer, double sent) {
    String body =
        measures == Dimension.ANGLE
            ? "IIXDR,A," + number(sent, Unit.DEGREE, 0) + ",D," + transducer
            : "IIXDR,D," + number(sent, Unit.METRE, 0) + ",M," + transducer;
    int sum = 0;
    for (int index = 0; index < body.length(); index++) {
      sum ^= body.charAt(index);
    }
    return "$" + body + "*" + "%02X".formatted(sum);
  }

  private Bytes frame(FrameShape shape, double sent) {
    Bytes field = field(shape.value(), sent);
    Bytes laid = shape.order() == ByteOrder.BIG ? field.reversed() : field;
    int between = shape.offset() - shape.start().length();
    int behind = shape.length() - shape.offset() - field.length() - shape.checkSum().byteCount();
    return shape
        .checkSum()
        .closing(shape.start().plus(filler(between)).plus(laid).plus(filler(behind)));
  }

  private Bytes filler(int count) {
    byte[] bytes = new byte[count];
    random.nextBytes(bytes);
    return Bytes.of(bytes);
  }

  /** The number's bytes, least significant first. */
  private Bytes field(PresentationFormat value, double sent) {
    BigDecimal number = inUnit(sent, value.unit(), value.exponent());
    int size = value.format().byteCount();
    if (value.format() == GattFormat.FLOAT32) {
      return least(BigInteger.valueOf(Float.floatToIntBits(number.floatValue())), size);
    }
    if (value.format() == GattFormat.FLOAT64) {
      return least(BigInteger.valueOf(Double.doubleToLongBits(number.doubleValue())), size);
    }
    BigInteger whole = number.setScale(0, RoundingMode.HALF_EVEN).toBigInteger();
    int bits = 8 * size - (value.format().isSigned() ? 1 : 0);
    if (!value.format().isInteger()
        || whole.bitLength() > bits
        || (whole.signum() < 0 && !value.format().isSigned())) {
      throw new IllegalArgumentException(number + " does not fit into " + value.format().word());
    }
    return least(whole, size);
  }

  private static Bytes least(BigInteger whole, int size) {
    byte[] bytes = new byte[size];
    for (int index = 0; index < size; index++) {
      bytes[index] = whole.shiftRight(8 * index).byteValue();
    }
    return Bytes.of(bytes);
  }
}
