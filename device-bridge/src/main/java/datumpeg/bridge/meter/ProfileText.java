package datumpeg.bridge.meter;

import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.bridge.frame.LinePattern;
import datumpeg.bridge.frame.binary.FrameShape;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.meter.MeterLanguage.BinaryFrames;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterLanguage.DescribedValues;
import datumpeg.bridge.meter.MeterLanguage.PatternLines;
import datumpeg.bridge.meter.MeterLanguage.Registers;
import datumpeg.bridge.meter.MeterLanguage.TextLines;
import datumpeg.bridge.meter.MeterLanguage.TransducerSentences;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Writes a profile as the text of a TOML file that {@link ProfileFile} reads back. */
public final class ProfileText {
  private final List<String> lines = new ArrayList<>();

  private ProfileText() {}

  /**
   * The file's text.
   *
   * @param remarks lines for its head
   */
  public static String of(MeterProfile profile, List<String> remarks) {
    ProfileText text = new ProfileText();
    remarks.forEach(remark -> text.lines.add("# " + remark));
    text.head(profile);
    text.serial(profile.serial());
    text.language(profile.language());
    if (profile.instrument() != null) {
      text.accuracy(profile.instrument());
    }
    return String.join("\n", text.lines) + "\n";
  }

  private void head(MeterProfile profile) {
    put("id", quoted(profile.id()));
    put("sign", quoted(ProfileWords.hyphenated(profile.sign())));
    put("angle_zero", quoted(ProfileWords.hyphenated(profile.angleZero())));
    if (!profile.trigger().isEmpty()) {
      put("trigger_hex", quoted(profile.trigger().hex()));
    }
  }

  private void serial(SerialSettings serial) {
    table("serial");
    put("baud", serial.baud());
    put("data_bits", serial.dataBits());
    put("parity", quoted(ProfileWords.hyphenated(serial.parity())));
    put("stop_bits", quoted(serial.stopBits().number()));
  }

  private void language(MeterLanguage language) {
    table(language.word());
    if (language instanceof TextLines text) {
      put("unit", quoted(text.defaultUnit().symbol()));
      put("longest_line_bytes", text.maximumLineBytes());
    } else if (language instanceof DescribedValues described) {
      put("unit", quoted(described.defaultUnit().symbol()));
      put("longest_line_bytes", described.maximumLineBytes());
    } else if (language instanceof TransducerSentences sentences) {
      put("transducer", quoted(sentences.transducer()));
      put("longest_line_bytes", sentences.maximumLineBytes());
    } else if (language instanceof PatternLines pattern) {
      pattern(pattern);
    } else if (language instanceof BinaryFrames frames) {
      frames(frames.shape());
    } else if (language instanceof CharacteristicValues values) {
      put("characteristic", quoted(values.characteristic()));
      value(values.format());
      put("offset", values.offset());
    } else if (language instanceof Registers registers) {
      put("station", registers.block().station());
      put("table", quoted(registers.block().table().word()));
      put("first", registers.block().first());
      put("every_ms", registers.block().everyMillis());
      put("word_order", quoted(registers.order().word()));
      value(registers.value());
    }
  }

  private void pattern(PatternLines lines) {
    LinePattern pattern = lines.pattern();
    put("line", quoted(pattern.shape().text()));
    put("unit", quoted(pattern.unit().symbol()));
    put("decimal", quoted(pattern.decimalMark().text()));
    put("exponent", pattern.exponent());
    if (!pattern.minus().isEmpty()) {
      put("minus", list(pattern.minus()));
      put("plus", list(pattern.plus()));
    }
    put("longest_line_bytes", lines.maximumLineBytes());
  }

  private void frames(FrameShape shape) {
    put("start", quoted(shape.start().hex()));
    put("length", shape.length());
    put("check_sum", quoted(shape.checkSum().word()));
    put("offset", shape.offset());
    put("byte_order", quoted(shape.order().word()));
    value(shape.value());
  }

  private void value(PresentationFormat value) {
    put("format", quoted(value.format().word()));
    put("exponent", value.exponent());
    put("unit", quoted(value.unit().symbol()));
  }

  private void accuracy(Meter instrument) {
    MeterAccuracy accuracy = instrument.accuracy();
    boolean angle = instrument.quantity().dimension() == Dimension.ANGLE;
    String unit = angle ? " rad" : " m";
    table("accuracy");
    put("quantity", quoted(instrument.quantity().text()));
    put("repeatability", quoted(plain(accuracy.repeatability()) + unit));
    put("common", quoted(plain(accuracy.common()) + unit));
    if (!angle) {
      put("per_metre", quoted(plain(accuracy.perMetre()) + unit));
      instrument.edgeMetres().ifPresent(edge -> put("edge", quoted(plain(edge) + unit)));
    }
    put("resolution", quoted(plain(accuracy.resolution()) + unit));
  }

  /** To a picometre: a table holds no more digits, and nothing measures less. */
  private static String plain(double value) {
    return BigDecimal.valueOf(value)
        .setScale(12, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  private void table(String word) {
    lines.add("");
    lines.add("[" + word + "]");
  }

  private void put(String key, Object value) {
    lines.add(key + " = " + value);
  }

  private static String list(List<String> texts) {
    return texts.stream().map(ProfileText::quoted).collect(Collectors.joining(", ", "[", "]"));
  }

  /** A basic string of TOML 1.0: quotes, backslashes and what cannot be seen are escaped. */
  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (int index = 0; index < text.length(); index++) {
      char character = text.charAt(index);
      if (character == '"' || character == '\\') {
        quoted.append('\\').append(character);
      } else if (Character.isISOControl(character)) {
        quoted.append("\\u%04x".formatted((int) character));
      } else {
        quoted.append(character);
      }
    }
    return quoted.append('"').toString();
  }
}
