package datumpeg.bridge.meter;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.gatt.PresentationFormat;
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

  private static void requireLine(int maximumLineBytes) {
    if (maximumLineBytes < 1) {
      throw new IllegalArgumentException(
          "the longest line must be at least 1 byte, found " + maximumLineBytes);
    }
  }
}
