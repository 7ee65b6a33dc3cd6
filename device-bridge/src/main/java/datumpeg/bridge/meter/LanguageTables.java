package datumpeg.bridge.meter;

import static datumpeg.bridge.meter.ProfileWords.byWord;
import static datumpeg.bridge.meter.ProfileWords.choice;
import static datumpeg.bridge.meter.ProfileWords.made;
import static datumpeg.bridge.meter.ProfileWords.number;
import static datumpeg.bridge.meter.ProfileWords.requiredNumber;
import static datumpeg.bridge.meter.ProfileWords.texts;
import static datumpeg.bridge.meter.ProfileWords.unit;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.LinePattern;
import datumpeg.bridge.frame.LinePattern.DecimalMark;
import datumpeg.bridge.frame.LineShape;
import datumpeg.bridge.frame.TextLineFramer;
import datumpeg.bridge.frame.binary.ByteOrder;
import datumpeg.bridge.frame.binary.CheckSum;
import datumpeg.bridge.frame.binary.FrameShape;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.frame.modbus.WordOrder;
import datumpeg.bridge.link.RegisterBlock;
import datumpeg.bridge.meter.MeterLanguage.BinaryFrames;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.DescribedValues;
import datumpeg.bridge.meter.MeterLanguage.PatternLines;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterLanguage.TransducerSentences;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.Value;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The one table of a profile that says what the meter's bytes are. */
final class LanguageTables {
  private static final int LONGEST_LINE_BYTES = 65536;
  private static final List<String> WORDS =
      List.of(
          TextLines.WORD,
          TransducerSentences.WORD,
          CharacteristicValues.WORD,
          DescribedValues.WORD,
          PatternLines.WORD,
          BinaryFrames.WORD,
          Registers.WORD);
  private static final Map<String, GattFormat> FORMATS =
      byWord(List.of(GattFormat.values()), GattFormat::word);
  private static final Map<String, DecimalMark> DECIMAL_MARKS =
      byWord(List.of(DecimalMark.values()), DecimalMark::text);
  private static final Map<String, ByteOrder> BYTE_ORDERS =
      byWord(List.of(ByteOrder.values()), ByteOrder::word);
  private static final Map<String, CheckSum> CHECK_SUMS =
      byWord(List.of(CheckSum.values()), CheckSum::word);
  private static final Map<String, WordOrder> WORD_ORDERS =
      byWord(List.of(WordOrder.values()), WordOrder::word);
  private static final Map<String, RegisterBlock.Table> REGISTER_TABLES =
      byWord(List.of(RegisterBlock.Table.values()), RegisterBlock.Table::word);

  private LanguageTables() {}

  /** The language; null, and mistakes added, if there is not exactly one without mistakes. */
  static @Nullable MeterLanguage read(Table file) {
    List<Table> given = WORDS.stream().flatMap(word -> file.findTable(word).stream()).toList();
    if (given.size() != 1) {
      file.mistake(
          "The profile has "
              + given.size()
              + " languages; expected exactly one table of "
              + String.join(", ", WORDS)
              + ".");
      return null;
    }
    String word = WORDS.stream().filter(file.keys()::contains).findFirst().orElseThrow();
    return language(word, given.get(0));
  }

  private static @Nullable MeterLanguage language(String word, Table table) {
    return switch (word) {
      case TextLines.WORD -> textLines(table);
      case TransducerSentences.WORD -> sentences(table);
      case CharacteristicValues.WORD -> values(table);
      case DescribedValues.WORD -> described(table);
      case PatternLines.WORD -> patternLines(table);
      case BinaryFrames.WORD -> frames(table);
      default -> registers(table);
    };
  }

  private static @Nullable MeterLanguage textLines(Table table) {
    Unit unit = unit(table);
    int longest = longestLine(table);
    return made(table, Optional.empty(), () -> new TextLines(longest, unit));
  }

  private static @Nullable MeterLanguage described(Table table) {
    Unit unit = unit(table);
    int longest = longestLine(table);
    return made(table, Optional.empty(), () -> new DescribedValues(longest, unit));
  }

  private static @Nullable MeterLanguage sentences(Table table) {
    String transducer = table.find("transducer").flatMap(Value::text).orElse("");
    int longest = longestLine(table);
    return made(table, Optional.empty(), () -> new TransducerSentences(longest, transducer));
  }

  private static @Nullable MeterLanguage patternLines(Table table) {
    Optional<Value> line = table.require("line");
    String shape = line.flatMap(Value::text).orElse("");
    Unit unit = unit(table);
    DecimalMark mark = choice(table, "decimal", DECIMAL_MARKS);
    int exponent = exponent(table);
    List<String> minus = texts(table, "minus");
    List<String> plus = texts(table, "plus");
    int longest = longestLine(table);
    return made(
        table,
        line,
        () ->
            new PatternLines(
                longest,
                new LinePattern(LineShape.parse(shape), unit, mark, exponent, minus, plus)));
  }

  private static @Nullable MeterLanguage values(Table table) {
    Optional<Value> uuid = table.require("characteristic");
    String characteristic =
        uuid.flatMap(Value::text).map(text -> text.toLowerCase(Locale.ROOT)).orElse("");
    PresentationFormat presentation = presentation(table);
    int offset = number(table, "offset", 0, 0, 500);
    return made(table, uuid, () -> new CharacteristicValues(characteristic, presentation, offset));
  }

  private static @Nullable MeterLanguage frames(Table table) {
    Optional<Value> start = table.require("start");
    String hex = start.flatMap(Value::text).orElse("");
    int length = requiredNumber(table, "length", 2, FrameShape.LONGEST_FRAME);
    int offset = requiredNumber(table, "offset", 0, FrameShape.LONGEST_FRAME);
    CheckSum checkSum = choice(table, "check_sum", CHECK_SUMS);
    ByteOrder order = choice(table, "byte_order", BYTE_ORDERS);
    PresentationFormat presentation = presentation(table);
    return made(
        table,
        start,
        () ->
            new BinaryFrames(
                new FrameShape(Bytes.ofHex(hex), length, checkSum, offset, order, presentation)));
  }

  private static @Nullable MeterLanguage registers(Table table) {
    int station = requiredNumber(table, "station", 1, 247);
    RegisterBlock.Table registers = choice(table, "table", REGISTER_TABLES);
    int first = requiredNumber(table, "first", 0, 65535);
    int every = number(table, "every_ms", 0, 0, 3_600_000);
    WordOrder order = choice(table, "word_order", WORD_ORDERS);
    PresentationFormat presentation = presentation(table);
    int count = Math.max(1, presentation.format().byteCount() / 2);
    return made(
        table,
        table.find("format"),
        () ->
            new Registers(
                new RegisterBlock(station, registers, first, count, every), presentation, order));
  }

  private static PresentationFormat presentation(Table table) {
    table.require("format");
    GattFormat format = choice(table, "format", FORMATS);
    return new PresentationFormat(format, exponent(table), unit(table));
  }

  private static int exponent(Table table) {
    return number(table, "exponent", 0, -12, 12);
  }

  private static int longestLine(Table table) {
    return number(
        table,
        "longest_line_bytes",
        TextLineFramer.DEFAULT_MAXIMUM_LINE_BYTES,
        1,
        LONGEST_LINE_BYTES);
  }
}
