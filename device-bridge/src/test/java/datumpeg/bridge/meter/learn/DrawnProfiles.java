package datumpeg.bridge.meter.learn;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.LinePattern;
import datumpeg.bridge.frame.LinePattern.DecimalMark;
import datumpeg.bridge.frame.LineShape;
import datumpeg.bridge.frame.binary.ByteOrder;
import datumpeg.bridge.frame.binary.CheckSum;
import datumpeg.bridge.frame.binary.FrameShape;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.frame.modbus.WordOrder;
import datumpeg.bridge.link.RegisterBlock;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterLanguage;
import datumpeg.bridge.meter.MeterLanguage.BinaryFrames;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.PatternLines;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterLanguage.TransducerSentences;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import java.util.List;
import java.util.SplittableRandom;

/** Meters nobody has seen, drawn from a seed. All invented. */
record DrawnProfiles(MeterProfile profile, Dimension dimension, int decimals) {
  private static final List<String> SHAPES =
      List.of(
          "{value},{number},{word}",
          "D={value};T={number};{word}",
          "{number} {word} {value}",
          "[{word}] v={value} q={number}%",
          "{word},{number},{number},{value},{number}");
  private static final List<String> DIRECTED =
      List.of("{value},{direction},{number}", "{direction}{value} q={number}");

  /** A meter of one of the six languages. */
  static DrawnProfiles draw(SplittableRandom random) {
    Dimension dimension = random.nextBoolean() ? Dimension.LENGTH : Dimension.ANGLE;
    boolean angle = dimension == Dimension.ANGLE;
    Unit unit =
        angle
            ? Unit.DEGREE
            : List.of(Unit.METRE, Unit.MILLIMETRE, Unit.FOOT).get(random.nextInt(3));
    int decimals = unit == Unit.MILLIMETRE ? 1 : angle ? 2 : 4;
    AngleZero zero = angle && random.nextInt(3) == 0 ? AngleZero.LEVEL : AngleZero.PLUMB;
    MeterLanguage language = language(random, unit, decimals, zero);
    boolean directed = language instanceof PatternLines lines && !lines.pattern().minus().isEmpty();
    Sign sign = !directed && random.nextInt(3) == 0 ? Sign.REVERSED : Sign.AS_SENT;
    return new DrawnProfiles(
        new MeterProfile(
            "drawn",
            SerialSettings.DEFAULT,
            language,
            sign,
            directed ? AngleZero.PLUMB : zero,
            null),
        dimension,
        language instanceof TransducerSentences ? (angle ? 2 : 4) : decimals);
  }

  /** What the display counts in. */
  Unit shownUnit() {
    if (profile.language() instanceof TransducerSentences) {
      return dimension == Dimension.ANGLE ? Unit.DEGREE : Unit.METRE;
    }
    return dimension == Dimension.ANGLE ? Unit.DEGREE : Unit.METRE;
  }

  private static MeterLanguage language(
      SplittableRandom random, Unit unit, int decimals, AngleZero zero) {
    return switch (random.nextInt(6)) {
      case 0 -> new TextLines(1024, unit);
      case 1 -> new TransducerSentences(1024, "TX");
      case 2 -> lines(random, unit, zero);
      case 3 -> frames(random, unit, decimals);
      case 4 ->
          new CharacteristicValues(
              "0000abcd-0000-1000-8000-00805f9b34fb",
              value(random, unit, decimals),
              random.nextInt(4));
      default -> registers(random, unit, decimals);
    };
  }

  private static MeterLanguage lines(SplittableRandom random, Unit unit, AngleZero zero) {
    boolean directed = unit == Unit.DEGREE && zero == AngleZero.PLUMB && random.nextBoolean();
    List<String> shapes = directed ? DIRECTED : SHAPES;
    LineShape shape = LineShape.parse(shapes.get(random.nextInt(shapes.size())));
    DecimalMark mark =
        shape.text().contains(",") || random.nextBoolean() ? DecimalMark.POINT : DecimalMark.COMMA;
    int exponent = directed ? 0 : -random.nextInt(3);
    return new PatternLines(
        1024,
        directed
            ? new LinePattern(shape, unit, mark, exponent, List.of("<"), List.of(">"))
            : LinePattern.of(shape, unit, mark, exponent));
  }

  private static PresentationFormat value(SplittableRandom random, Unit unit, int decimals) {
    if (random.nextInt(3) == 0) {
      return new PresentationFormat(
          random.nextBoolean() ? GattFormat.FLOAT32 : GattFormat.FLOAT64, 0, unit);
    }
    boolean narrow = unit == Unit.DEGREE && random.nextBoolean();
    GattFormat format = narrow ? GattFormat.SINT16 : GattFormat.SINT32;
    return new PresentationFormat(format, -decimals, unit);
  }

  private static <T> T drawn(SplittableRandom random, List<T> all) {
    return all.get(random.nextInt(all.size()));
  }

  private static MeterLanguage frames(SplittableRandom random, Unit unit, int decimals) {
    PresentationFormat value = value(random, unit, decimals);
    CheckSum checkSum = drawn(random, List.of(CheckSum.values()));
    int before = random.nextInt(3);
    int behind = random.nextInt(3);
    Bytes start = random.nextBoolean() ? Bytes.ofHex("a5") : Bytes.ofHex("aa55");
    int length =
        start.length() + before + value.format().byteCount() + behind + checkSum.byteCount();
    return new BinaryFrames(
        new FrameShape(
            start,
            length,
            checkSum,
            start.length() + before,
            random.nextBoolean() ? ByteOrder.LITTLE : ByteOrder.BIG,
            value));
  }

  private static MeterLanguage registers(SplittableRandom random, Unit unit, int decimals) {
    PresentationFormat value = value(random, unit, decimals);
    WordOrder order = drawn(random, List.of(WordOrder.values()));
    return new Registers(
        new RegisterBlock(1, RegisterBlock.Table.HOLDING, 100, value.format().byteCount() / 2, 0),
        value,
        order);
  }
}
