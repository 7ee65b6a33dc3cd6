package datumpeg.bridge.meter;

import static datumpeg.bridge.meter.ProfileWords.byWord;
import static datumpeg.bridge.meter.ProfileWords.choice;
import static datumpeg.bridge.meter.ProfileWords.number;

import datumpeg.analysis.measuring.Meter;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.jobfile.MetersTable;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.link.SerialSettings.Parity;
import datumpeg.bridge.link.SerialSettings.StopBits;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.toml.Table;
import datumpeg.bridge.toml.TomlText;
import datumpeg.bridge.toml.Value;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads a meter profile from the text of a TOML file. One use. */
public final class ProfileFile {
  private static final int LONGEST_TRIGGER_BYTES = 64;
  private static final Map<String, Sign> SIGNS =
      byWord(List.of(Sign.values()), ProfileWords::hyphenated);
  private static final Map<String, AngleZero> ZEROS =
      byWord(List.of(AngleZero.values()), ProfileWords::hyphenated);
  private static final Map<String, Parity> PARITIES =
      byWord(List.of(Parity.values()), ProfileWords::hyphenated);
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
  public static MeterProfile read(String text, String name) {
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
    @Nullable MeterLanguage language = LanguageTables.read(file);
    Sign sign = choice(file, "sign", SIGNS);
    AngleZero zero = choice(file, "angle_zero", ZEROS);
    Bytes trigger = trigger();
    @Nullable Meter instrument =
        file.findTable("accuracy")
            .flatMap(table -> MetersTable.meter(id, table, "meter profile " + id))
            .orElse(null);
    file.refuseOthers();
    return file.mistakes().isEmpty() && language != null
        ? new MeterProfile(id, serial, language, sign, zero, instrument, trigger)
        : null;
  }

  /** The command as text, or as hexadecimal digits where it is none. */
  private Bytes trigger() {
    Optional<Value> text = file.find("trigger");
    Optional<Value> hex = file.find("trigger_hex");
    if (text.isPresent() && hex.isPresent()) {
      file.mistake("The profile has trigger and trigger_hex; expected one of them.");
    }
    Bytes bytes =
        text.flatMap(Value::text)
            .map(command -> Bytes.of(command.getBytes(StandardCharsets.UTF_8)))
            .orElseGet(() -> hex.map(ProfileFile::hexadecimal).orElse(Bytes.empty()));
    if (bytes.length() > LONGEST_TRIGGER_BYTES) {
      file.mistake("The trigger has " + bytes.length() + " bytes; expected at most 64.");
    }
    return bytes;
  }

  private static Bytes hexadecimal(Value value) {
    try {
      return Bytes.ofHex(value.text().orElse(""));
    } catch (IllegalArgumentException e) {
      value.mistake("'" + value.name() + "' is not written in pairs of hexadecimal digits.");
      return Bytes.empty();
    }
  }

  private SerialSettings serial(Table table) {
    int baud = number(table, "baud", SerialSettings.DEFAULT.baud(), 1, 10_000_000);
    int bits = number(table, "data_bits", SerialSettings.DEFAULT.dataBits(), 5, 8);
    Parity parity = choice(table, "parity", PARITIES);
    StopBits stop = choice(table, "stop_bits", STOP_BITS);
    table.refuseOthers();
    return new SerialSettings(baud, bits, parity, stop);
  }
}
