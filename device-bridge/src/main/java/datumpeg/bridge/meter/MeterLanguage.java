package datumpeg.bridge.meter;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.LinePattern;
import datumpeg.bridge.frame.binary.FrameShape;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.frame.modbus.WordOrder;
import datumpeg.bridge.link.RegisterBlock;
import java.util.List;

/** What a meter's bytes are: how they are cut into messages, and how one message is read. */
public sealed interface MeterLanguage {

  /** How profiles name the language. */
  String word();

  /** Its properties as text, a line each in a fixed order: framing and decoding first. */
  List<String> canonicalLines();

  /**
   * One value a line of text, with or without its unit.
   *
   * @param maximumLineBytes a longer line is dropped and counted
   * @param defaultUnit the unit of a line that names none
   */
  record TextLines(int maximumLineBytes, Unit defaultUnit) implements MeterLanguage {
    static final String WORD = "text-line";

    public TextLines {
      requireLine(maximumLineBytes);
    }

    @Override
    public String word() {
      return WORD;
    }

    @Override
    public List<String> canonicalLines() {
      return List.of(
          "framing = text-line",
          "decoding = general-text-line",
          "maximum_line_bytes = " + maximumLineBytes,
          "default_unit = " + defaultUnit.symbol());
    }
  }

  /**
   * Sentences of NMEA 0183 with transducer measurements.
   *
   * @param maximumLineBytes a longer line is dropped and counted; the standard allows 82
   * @param transducer the name of the one that counts; empty for the only length or angle
   */
  record TransducerSentences(int maximumLineBytes, String transducer) implements MeterLanguage {
    static final String WORD = "nmea-0183-xdr";

    public TransducerSentences {
      requireLine(maximumLineBytes);
    }

    @Override
    public String word() {
      return WORD;
    }

    @Override
    public List<String> canonicalLines() {
      return List.of(
          "framing = text-line",
          "decoding = nmea-0183-xdr",
          "maximum_line_bytes = " + maximumLineBytes,
          "transducer = " + transducer);
    }
  }

  /**
   * Values of one characteristic of a Bluetooth LE meter, one a notification.
   *
   * @param characteristic its UUID in small letters: the channel of the link
   * @param format how the value is read
   * @param offset how many bytes stand before it
   */
  record CharacteristicValues(String characteristic, PresentationFormat format, int offset)
      implements MeterLanguage {
    static final String WORD = "gatt-value";

    public CharacteristicValues {
      if (!characteristic.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")) {
        throw new IllegalArgumentException(
            "a characteristic is named by a UUID of 32 small hexadecimal digits with four hyphens,"
                + " found '"
                + characteristic
                + "'");
      }
      if (offset < 0) {
        throw new IllegalArgumentException("the offset must be 0 or more bytes, found " + offset);
      }
    }

    @Override
    public String word() {
      return WORD;
    }

    @Override
    public List<String> canonicalLines() {
      return List.of(
          "framing = gatt-value",
          "decoding = " + format.format().word(),
          "characteristic = " + characteristic,
          "exponent = " + format.exponent(),
          "unit = " + format.unit().symbol(),
          "offset = " + offset);
    }
  }

  /**
   * Values of a Bluetooth LE meter that says itself how they are to be read; what does not is text
   * lines.
   *
   * @param maximumLineBytes a longer line is dropped and counted
   * @param defaultUnit the unit of a line that names none
   */
  record DescribedValues(int maximumLineBytes, Unit defaultUnit) implements MeterLanguage {
    static final String WORD = "gatt-described";

    public DescribedValues {
      requireLine(maximumLineBytes);
    }

    @Override
    public String word() {
      return WORD;
    }

    @Override
    public List<String> canonicalLines() {
      return List.of(
          "framing = gatt-described",
          "decoding = gatt-described",
          "maximum_line_bytes = " + maximumLineBytes,
          "default_unit = " + defaultUnit.symbol());
    }
  }

  /**
   * Lines of one shape, of which one number counts.
   *
   * @param maximumLineBytes a longer line is dropped and counted
   */
  record PatternLines(int maximumLineBytes, LinePattern pattern) implements MeterLanguage {
    static final String WORD = "text-pattern";

    public PatternLines {
      requireLine(maximumLineBytes);
    }

    @Override
    public String word() {
      return WORD;
    }

    @Override
    public List<String> canonicalLines() {
      return List.of(
          "framing = text-line",
          "decoding = text-pattern",
          "maximum_line_bytes = " + maximumLineBytes,
          "line = " + pattern.shape().text(),
          "unit = " + pattern.unit().symbol(),
          "decimal = " + pattern.decimalMark().text(),
          "exponent = " + pattern.exponent(),
          "minus = " + pattern.minus(),
          "plus = " + pattern.plus());
    }
  }

  /** Binary frames of one length. */
  record BinaryFrames(FrameShape shape) implements MeterLanguage {
    static final String WORD = "binary-frame";

    @Override
    public String word() {
      return WORD;
    }

    @Override
    public List<String> canonicalLines() {
      return List.of(
          "framing = binary-frame",
          "decoding = " + shape.value().format().word(),
          "start = " + shape.start().hex(),
          "length = " + shape.length(),
          "check_sum = " + shape.checkSum().word(),
          "offset = " + shape.offset(),
          "byte_order = " + shape.order().word(),
          "exponent = " + shape.value().exponent(),
          "unit = " + shape.value().unit().symbol());
    }
  }

  /**
   * A number in the registers of a Modbus station, which is asked for it.
   *
   * @param block where the number stands and how often it is asked for
   */
  record Registers(RegisterBlock block, PresentationFormat value, WordOrder order)
      implements MeterLanguage {
    static final String WORD = "modbus-register";

    public Registers {
      if (value.format().byteCount() != 2 * block.count()) {
        throw new IllegalArgumentException(
            value.format().word() + " does not fill " + block.count() + " registers of two bytes");
      }
    }

    @Override
    public String word() {
      return WORD;
    }

    @Override
    public List<String> canonicalLines() {
      return List.of(
          "framing = modbus-register",
          "decoding = " + value.format().word(),
          "station = " + block.station(),
          "table = " + block.table().word(),
          "first = " + block.first(),
          "every_ms = " + block.everyMillis(),
          "word_order = " + order.word(),
          "exponent = " + value.exponent(),
          "unit = " + value.unit().symbol());
    }
  }

  private static void requireLine(int maximumLineBytes) {
    if (maximumLineBytes < 1) {
      throw new IllegalArgumentException(
          "the longest line must be at least 1 byte, found " + maximumLineBytes);
    }
  }
}
