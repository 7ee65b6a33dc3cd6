package datumpeg.bridge.fuzz;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.GeneralTextLine;
import datumpeg.bridge.frame.LinePattern;
import datumpeg.bridge.frame.LinePattern.DecimalMark;
import datumpeg.bridge.frame.LineShape;
import datumpeg.bridge.frame.gatt.GattDecoding;
import datumpeg.bridge.frame.gatt.GattFormat;
import datumpeg.bridge.frame.gatt.PresentationFormat;
import datumpeg.bridge.frame.modbus.RegisterDecoding;
import datumpeg.bridge.frame.modbus.WordOrder;
import datumpeg.bridge.frame.nmea.TransducerDecoding;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.replay.CaptureReader;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.meter.ProfileFile;
import datumpeg.bridge.meter.learn.Displayed;
import datumpeg.bridge.meter.learn.Learning;
import datumpeg.bridge.meter.learn.Shown;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

/** Something that must take any bytes: without an exception of ours to it, a hang or a flood. */
enum FuzzTarget {
  TEXT_LINE(bytes -> new GeneralTextLine(Unit.METRE).decode(bytes)),
  LINE_PATTERN(FuzzTarget::linePattern),
  NMEA(bytes -> new TransducerDecoding("").decode(bytes)),
  GATT(FuzzTarget::gatt),
  REGISTERS(FuzzTarget::registers),
  STREAM_OF_LINES(bytes -> stream(FuzzProfiles.LINES, bytes)),
  STREAM_OF_FRAMES(bytes -> stream(FuzzProfiles.FRAMES, bytes)),
  LEARN(FuzzTarget::learn),
  DISPLAY(bytes -> Displayed.parse(text(bytes))),
  LINK(bytes -> refusing(() -> LinkAddress.parse(text(bytes)))),
  PROFILE_FILE(bytes -> refusing(() -> ProfileFile.read(text(bytes), "fuzz"))),
  JOB_FILE(bytes -> refusing(() -> JobFile.read(text(bytes), "fuzz"))),
  CAPTURE(bytes -> refusing(() -> readCapture(bytes)));

  @SuppressWarnings("ImmutableEnumChecker") // they keep nothing
  private final Consumer<Bytes> target;

  FuzzTarget(Consumer<Bytes> target) {
    this.target = target;
  }

  void accept(byte[] bytes) {
    target.accept(Bytes.of(bytes));
  }

  /** How its corpus is named. */
  String folder() {
    return name().toLowerCase(Locale.ROOT);
  }

  private static String text(Bytes bytes) {
    return new String(bytes.toArray(), StandardCharsets.UTF_8);
  }

  /** A refusal with a sentence is what is wanted of wrong input. */
  private static void refusing(Runnable parse) {
    try {
      parse.run();
    } catch (InputException refused) {
      if (String.valueOf(refused.getMessage()).isBlank()) {
        throw new IllegalStateException("a refusal without a sentence", refused);
      }
    }
  }

  /** The shape up to the first line end, the line behind it. */
  private static void linePattern(Bytes bytes) {
    String all = text(bytes);
    int end = Math.max(0, all.indexOf('\n'));
    LineShape shape;
    try {
      shape = LineShape.parse(all.substring(0, end));
    } catch (IllegalArgumentException refused) {
      shape = LineShape.parse("{word}{value} {unit}{rest}");
    }
    if (!shape.parts().contains(LineShape.Slot.DIRECTION)) {
      LinePattern.of(shape, Unit.MILLIMETRE, DecimalMark.COMMA, -1)
          .decode(bytes.slice(end, bytes.length()));
    }
  }

  /** The first byte chooses the format, the next two the exponent and the offset. */
  private static void gatt(Bytes bytes) {
    PresentationFormat.of(bytes);
    if (bytes.length() >= 3) {
      GattFormat format = chosen(List.of(GattFormat.values()), bytes.at(0));
      PresentationFormat presentation =
          new PresentationFormat(format, (byte) bytes.at(1), Unit.DEGREE);
      new GattDecoding(presentation, bytes.at(2) % 32).decode(bytes.slice(3, bytes.length()));
    }
  }

  private static void registers(Bytes bytes) {
    if (bytes.length() >= 3) {
      List<GattFormat> formats = List.of(GattFormat.SINT16, GattFormat.FLOAT32, GattFormat.UINT64);
      WordOrder order = chosen(List.of(WordOrder.values()), bytes.at(1));
      new RegisterDecoding(chosen(formats, bytes.at(0)), order, (byte) bytes.at(2), Unit.METRE)
          .decode(bytes.slice(3, bytes.length()));
    }
  }

  private static <T> T chosen(List<T> all, int number) {
    return all.get(number % all.size());
  }

  private static void stream(MeterProfile profile, Bytes bytes) {
    MeterStream stream = new MeterStream(profile);
    int half = bytes.length() / 2;
    stream.accept(bytes.slice(0, half), "data");
    stream.accept(bytes.slice(half, bytes.length()), "data");
    stream.lost();
    stream.counts();
  }

  /** Three readings, cut at the bytes 0xFF; the displays do not matter as long as they differ. */
  private static void learn(Bytes bytes) {
    List<Shown> all = new ArrayList<>();
    int start = 0;
    String[] displays = {"1.25 m", "2.5 m", "12.345 m"};
    for (int i = 0; i < displays.length; i++) {
      int end = start;
      while (end < bytes.length() && (i == displays.length - 1 || bytes.at(end) != 0xFF)) {
        end++;
      }
      Shown.Piece piece = new Shown.Piece("data", bytes.slice(start, end));
      all.add(new Shown(List.of(piece), Displayed.parse(displays[i]).orElseThrow()));
      start = Math.min(bytes.length(), end + 1);
    }
    Learning.ofSender().proposals(all);
  }

  private static void readCapture(Bytes bytes) {
    try (CaptureReader reader =
        new CaptureReader(new ByteArrayInputStream(bytes.toArray()), "fuzz")) {
      while (reader.next().isPresent()) {
        reader.lineNumber();
      }
    }
  }
}
