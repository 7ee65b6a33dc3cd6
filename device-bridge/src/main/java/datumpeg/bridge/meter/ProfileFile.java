package datumpeg.bridge.meter;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.TextLineFramer;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.link.SerialSettings.Parity;
import datumpeg.bridge.link.SerialSettings.StopBits;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.DescribedValues;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterLanguage.TransducerSentences;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.TomlText;
import datumpeg.bridge.toml.Value;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads a meter profile from the text of a TOML file. One use. */
final class ProfileFile {
  private static final int LONGEST_LINE_BYTES = 65536;
  private static final Map<String, Unit> UNITS =
      byWord(
          Arrays.stream(Unit.values()).filter(unit -> unit != Unit.FOOT_AND_INCH).toList(),
          Unit::symbol);
  private static final Map<String, GattFormat> FORMATS =
      byWord(List.of(GattFormat.values()), GattFormat::word);
  private static final Map<String, Sign> SIGNS =
      byWord(List.of(Sign.values()), ProfileFile::hyphenated);
  private static final Map<String, AngleZero> ZEROS =
      byWord(List.of(AngleZero.values()), ProfileFile::hyphenated);
  private static final Map<String, Parity> PARITIES =
      byWord(List.of(Parity.values()), ProfileFile::hyphenated);
  private static final Map<String, StopBits> STOP_BITS =
      byWord(List.of(StopBits.values()), StopBits::number);

  private final Table file;

  private ProfileFile(Table file) {
    this.file = file;
  }

  /**
   * The profile a text describes.
   *
   * @param name of the file, for messages
   * @throws InputException naming every mistake with its line and column
   */
  static MeterProfile read(String text, String name) {
    Mistakes mistakes = new Mistakes();
    @Nullable MeterProfile profile = new ProfileFile(TomlText.read(text, name, mistakes)).read();
    if (profile == null || !mistakes.isEmpty()) {
      throw new InputException(mistakes.text());
    }
    return profile;
  }

  private @Nullable MeterProfile read() {
    String id = file.require("id").flatMap(Value::text).orElse("");
    if (!id.matches("[A-Za-z0-9-]{1,64}")) {
      file.mistake("'id' is \"" + id + "\"; expected 1 to 64 letters, digits or hyphens.");
    }
    SerialSettings serial =
        file.findTable("serial").map(this::serial).orElse(SerialSettings.DEFAULT);
    @Nullable MeterLanguage language = language();
    Sign sign = choice(file, "sign", SIGNS);
    AngleZero zero = choice(file, "angle_zero", ZEROS);
    file.refuseOthers();
    return file.mistakes().isEmpty() && language != null
        ? new MeterProfile(id, serial, language, sign, zero, null)
        : null;
  }

  private SerialSettings serial(Table table) {
    int baud = number(table, "baud", SerialSettings.DEFAULT.baud(), 1, 10_000_000);
    int bits = number(table, "data_bits", SerialSettings.DEFAULT.dataBits(), 5, 8);
    Parity parity = choice(table, "parity", PARITIES);
    StopBits stop = choice(table, "stop_bits", STOP_BITS);
    table.refuseOthers();
    return new SerialSettings(baud, bits, parity, stop);
  }

  private @Nullable MeterLanguage language() {
    Optional<Table> text = file.findTable(TextLines.WORD);
    Optional<Table> sentences = file.findTable(TransducerSentences.WORD);
    Optional<Table> values = file.findTable(CharacteristicValues.WORD);
    Optional<Table> described = file.findTable(DescribedValues.WORD);
    long given =
        List.of(text, sentences, values, described).stream().filter(Optional::isPresent).count();
    if (given != 1) {
      file.mistake(
          "The profile has "
              + given
              + " languages; expected exactly one table of "
              + String.join(
                  ", ",
                  TextLines.WORD,
                  TransducerSentences.WORD,
                  CharacteristicValues.WORD,
                  DescribedValues.WORD)
              + ".");
      return null;
    }
    if (text.isPresent()) {
      return textLines(text.get());
    }
    if (described.isPresent()) {
      return described(described.get());
    }
    return sentences.isPresent() ? sentences(sentences.get()) : values(values.orElseThrow());
  }

  private static MeterLanguage textLines(Table table) {
    Unit unit = unit(table);
    int longest = longestLine(table, TextLineFramer.DEFAULT_MAXIMUM_LINE_BYTES);
    table.refuseOthers();
    return new TextLines(longest, unit);
  }

  private static MeterLanguage described(Table table) {
    Unit unit = unit(table);
    int longest = longestLine(table, TextLineFramer.DEFAULT_MAXIMUM_LINE_BYTES);
    table.refuseOthers();
    return new DescribedValues(longest, unit);
  }

  private static MeterLanguage sentences(Table table) {
    String transducer = table.find("transducer").flatMap(Value::text).orElse("");
    int longest = longestLine(table, TextLineFramer.DEFAULT_MAXIMUM_LINE_BYTES);
    table.refuseOthers();
    return new TransducerSentences(longest, transducer);
  }

  private static @Nullable MeterLanguage values(Table table) {
    Optional<Value> uuid = table.require("characteristic");
    String characteristic =
        uuid.flatMap(Value::text).map(text -> text.toLowerCase(Locale.ROOT)).orElse("");
    table.require("format");
    GattFormat format = choice(table, "format", FORMATS);
    int exponent = number(table, "exponent", 0, -12, 12);
    int offset = number(table, "offset", 0, 0, 500);
    PresentationFormat presentation = new PresentationFormat(format, exponent, unit(table));
    table.refuseOthers();
    try {
      return new CharacteristicValues(characteristic, presentation, offset);
    } catch (IllegalArgumentException e) {
      uuid.ifPresent(value -> value.mistake("'" + value.name() + "': " + e.getMessage() + "."));
      return null;
    }
  }

  private static int longestLine(Table table, int otherwise) {
    return number(table, "longest_line_bytes", otherwise, 1, LONGEST_LINE_BYTES);
  }

  private static int number(Table table, String key, int otherwise, int least, int most) {
    Optional<Value> value = table.find(key);
    Optional<Long> number = value.flatMap(Value::wholeNumber);
    if (number.isPresent() && (number.get() < least || number.get() > most)) {
      value
          .get()
          .mistake(
              "'%s' is %d; expected %d to %d."
                  .formatted(value.get().name(), number.get(), least, most));
      return otherwise;
    }
    return number.map(Long::intValue).orElse(otherwise);
  }

  private static Unit unit(Table table) {
    table.require("unit");
    return choice(table, "unit", UNITS);
  }

  /**
   * What a word stands for; of an absent or unknown one the first, with a mistake for the latter.
   */
  private static <T> T choice(Table table, String key, Map<String, T> choices) {
    T first = choices.values().iterator().next();
    Optional<Value> value = table.find(key);
    Optional<String> text = value.flatMap(Value::text);
    if (value.isEmpty() || text.isEmpty()) {
      return first;
    }
    @Nullable T chosen = choices.get(text.get());
    if (chosen == null) {
      String hint = Nearest.hint(text.get(), choices.keySet());
      value.get().mistake("'%s' is \"%s\"; %s.".formatted(value.get().name(), text.get(), hint));
      return first;
    }
    return chosen;
  }

  private static String hyphenated(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** In the order of the values: the first is what an absent key means. */
  private static <T> Map<String, T> byWord(List<T> values, Function<T, String> word) {
    Map<String, T> choices = new LinkedHashMap<>();
    values.forEach(value -> choices.put(word.apply(value), value));
    return Collections.unmodifiableMap(choices);
  }
}
