package datumpeg.bridge.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MeterAccuracy;
import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.link.SerialSettings.Parity;
import datumpeg.bridge.link.SerialSettings.StopBits;
import datumpeg.bridge.meter.MeterLanguage.CharacteristicValues;
import datumpeg.bridge.meter.MeterProfile.AngleZero;
import datumpeg.bridge.meter.MeterProfile.Sign;
import datumpeg.bridge.meter.MeterStream.Message;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeterProfilesTest {
  private static final String CHANNEL = "0000abcd-0000-1000-8000-00805f9b34fb";

  @TempDir private Path folder;

  /** An invented tilt meter on Bluetooth LE. */
  private static final String TILT =
      """
      id = "shed-tilt"
      sign = "reversed"
      angle_zero = "level"
      [gatt-value]
      characteristic = "0000ABCD-0000-1000-8000-00805F9B34FB"
      format = "sint16"
      exponent = -2
      unit = "deg"
      offset = 1
      """;

  @Test
  void theShippedProfilesAllRead() {
    MeterProfiles profiles = new MeterProfiles(folder.resolve("absent"));
    assertEquals(
        List.of("general-text-line", "nmea-transducer", "self-describing"), profiles.ids());
    profiles.ids().forEach(id -> assertEquals(id, profiles.named(id).id()));
    assertEquals(4800, profiles.named("nmea-transducer").serial().baud());
  }

  @Test
  void aProfileOfTheUserReadsItsMetersBytes() throws IOException {
    write("shed-tilt", TILT);
    MeterProfile profile = new MeterProfiles(folder).named("shed-tilt");
    assertEquals(Sign.REVERSED, profile.sign());
    assertEquals(AngleZero.LEVEL, profile.angleZero());
    assertEquals(CHANNEL, ((CharacteristicValues) profile.language()).characteristic());
    MeterStream stream = new MeterStream(profile);
    // 0x2346 = 9030, in hundredths of a degree from level: 0.30° beyond plumb, reversed.
    List<Message> messages = stream.accept(Bytes.ofHex("a14623"), CHANNEL);
    Measured measured = assertInstanceOf(Measured.class, messages.get(0).decoded());
    assertEquals("90.30", measured.valueText());
    assertEquals(Unit.DEGREE, measured.unit());
    assertEquals(Math.toRadians(-0.3), profile.valueSi(measured), 1e-12);
    assertEquals(List.of(), stream.accept(Bytes.ofHex("a14623"), "another characteristic"));
    assertEquals(1, stream.counts().readings());
  }

  @Test
  void aSerialLineIsSetUpAsTheProfileSays() throws IOException {
    write(
        "old-laser",
        """
        id = "old-laser"
        [serial]
        baud = 1200
        data_bits = 7
        parity = "even"
        stop_bits = "2"
        [text-line]
        unit = "mm"
        longest_line_bytes = 20
        """);
    MeterProfile profile = new MeterProfiles(folder).named("old-laser");
    assertEquals(new SerialSettings(1200, 7, Parity.EVEN, StopBits.TWO), profile.serial());
    MeterStream stream = new MeterStream(profile);
    List<Message> messages =
        stream.accept(
            Bytes.of(("20118\r\n" + "x".repeat(21) + "\r\n").getBytes(StandardCharsets.US_ASCII)),
            "data");
    assertEquals(20.118, ((Measured) messages.get(0).decoded()).siValue(), 1e-12);
    assertEquals(1, stream.counts().overlong());
  }

  @Test
  void sentencesOfNmeaAreReadByTheNamedTransducer() throws IOException {
    write("mast", "id = \"mast\"\n[nmea-0183-xdr]\ntransducer = \"TILT\"\n");
    MeterStream stream = new MeterStream(new MeterProfiles(folder).named("mast"));
    List<Message> messages =
        stream.accept(
            Bytes.of(
                "$IIXDR,D,12.003,M,DIST,A,-0.25,D,TILT*67\r\n".getBytes(StandardCharsets.US_ASCII)),
            "data");
    assertEquals("-0.25", ((Measured) messages.get(0).decoded()).valueText());
  }

  @ParameterizedTest(name = "{2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "exponent = -2 | exponent = 99 | 'gatt-value.exponent' is 99; expected -12 to 12.",
        "format = \"sint16\" | format = \"sint61\" | the nearest is 'sint16'",
        "format = \"sint16\" | formt = \"sint16\" | The key 'gatt-value.format' is missing.",
        "format = \"sint16\" | formt = \"sint16\" | The key 'gatt-value.formt' is unknown",
        "unit = \"deg\" | unit = \"degrees\" | 'gatt-value.unit' is \"degrees\"",
        "[gatt-value] | [gatt-values] | expected exactly one table of text-line, nmea-0183-xdr",
        "0000ABCD- | ABCD- | a characteristic is named by a UUID",
        "sign = \"reversed\" | sign = \"backward\" | 'sign' is \"backward\"",
        "id = \"shed-tilt\" | id = \"other\" | the id is 'other'; expected 'shed-tilt'",
      })
  void aMistakeIsNamedWithItsPlace(String right, String wrong, String said) throws IOException {
    write("shed-tilt", TILT.replace(right, wrong));
    InputException refused =
        assertThrows(InputException.class, () -> new MeterProfiles(folder).named("shed-tilt"));
    String message = String.valueOf(refused.getMessage());
    assertTrue(message.contains(said), message);
    assertTrue(message.contains("shed-tilt.toml"), message);
  }

  /** An invented laser: everything a profile of lines can say. */
  private static final String LASER =
      """
      id = "yard-laser"
      trigger = "M\\r"
      [text-pattern]
      line = "{value},{number},{word}"
      unit = "mm"
      decimal = "."
      exponent = -1
      [accuracy]
      quantity = "distance"
      expanded_uncertainty = "1.5 mm"
      coverage = 2
      resolution = "1 mm"
      """;

  @Test
  void aProfileKnowsItsInstrumentAndItsCommand() throws IOException {
    write("yard-laser", LASER);
    MeterProfile profile = new MeterProfiles(folder).named("yard-laser");
    assertEquals(Bytes.ofHex("4d0d"), profile.trigger());
    Meter instrument = profile.instrument();
    assertNotNull(instrument);
    assertEquals("meter profile yard-laser", instrument.stated());
    assertEquals(MeterAccuracy.ofExpanded(0.0015, 2, 0.001), instrument.accuracy());
    Message message =
        new MeterStream(profile)
            .accept(Bytes.of("123450,21.5,OK\r\n".getBytes(StandardCharsets.US_ASCII)), "data")
            .get(0);
    assertEquals(12.345, ((Measured) message.decoded()).siValue(), 1e-12);
  }

  @Test
  void whatIsWrittenReadsBackAsTheSameProfile() throws IOException {
    for (String text : List.of(TILT, LASER, FRAMES, REGISTERS)) {
      MeterProfile profile = ProfileFile.read(text, "test");
      MeterProfile again = ProfileFile.read(ProfileText.of(profile, List.of("a note")), "again");
      assertEquals(withoutAccuracy(profile), withoutAccuracy(again));
      @Nullable Meter instrument = profile.instrument();
      @Nullable Meter reread = again.instrument();
      assertEquals(instrument == null, reread == null);
      if (instrument != null && reread != null) {
        assertEquals(instrument.quantity(), reread.quantity());
        assertEquals(
            instrument.accuracy().repeatability(), reread.accuracy().repeatability(), 1e-12);
      }
    }
  }

  private static List<String> withoutAccuracy(MeterProfile profile) {
    return profile.canonicalText().lines().filter(line -> !line.startsWith("accuracy")).toList();
  }

  /** An invented meter that sends frames. */
  private static final String FRAMES =
      """
      id = "frames"
      trigger_hex = "a501"
      [binary-frame]
      start = "aa55"
      length = 8
      check_sum = "sum"
      offset = 3
      byte_order = "big"
      format = "sint32"
      exponent = -1
      unit = "mm"
      """;

  /** An invented inclinometer on RS-485. */
  private static final String REGISTERS =
      """
      id = "registers"
      angle_zero = "level"
      [modbus-register]
      station = 3
      table = "input"
      first = 100
      every_ms = 500
      word_order = "cdab"
      format = "float32"
      unit = "deg"
      [accuracy]
      quantity = "tilt"
      repeatability = "0.01 deg"
      common = "0.02 deg"
      """;

  @Test
  void framesAndRegistersAreReadAsTheirProfilesSay() {
    Message frame =
        new MeterStream(ProfileFile.read(FRAMES, "test"))
            .accept(Bytes.ofHex("aa55070001e23a23"), "data")
            .get(0);
    assertEquals(12.345, ((Measured) frame.decoded()).siValue(), 1e-12);
    MeterStream registers = new MeterStream(ProfileFile.read(REGISTERS, "test"));
    // 90.5 as float32 is 42 b5 00 00; words swapped.
    Message answer = registers.accept(Bytes.ofHex("000042b5"), "input-100@3").get(0);
    Measured read = registers.profile().read((Measured) answer.decoded());
    assertEquals("0.5", read.valueText());
    assertEquals(List.of(), registers.accept(Bytes.ofHex("000042b5"), "holding-100@3"));
  }

  @ParameterizedTest(name = "{3}")
  @CsvSource(
      delimiter = '|',
      value = {
        "LASER | {value} | {valeu} | is no blank to be filled",
        "LASER | {value} | {number} | it has {value} 0 times; expected once",
        "LASER | decimal = \".\" | decimal = \";\" | 'text-pattern.decimal' is",
        "LASER | trigger = | triger = | the nearest is 'trigger'",
        "LASER | coverage = 2 | coverge = 2 | the nearest is 'coverage'",
        "LASER | \"1.5 mm\" | \"1.5 deg\" | accuracy.expanded_uncertainty",
        "FRAMES | \"aa55\" | \"aa5\" | 'binary-frame.start'",
        "FRAMES | length = 8 | length = 6 | do not fit into 6 bytes",
        "FRAMES | a501 | a50 | is not written in pairs of hexadecimal digits",
        "REGISTERS | cdab | cdba | 'modbus-register.word_order' is \"cdba\"",
        "REGISTERS | float32 | sint8 | sint8 does not fill 1 registers",
        "REGISTERS | station = 3 | station = 300 | expected 1 to 247",
      })
  void mistakesInTheOtherLanguagesAreNamed(String which, String right, String wrong, String said) {
    String text =
        switch (which) {
          case "LASER" -> LASER;
          case "FRAMES" -> FRAMES;
          default -> REGISTERS;
        };
    InputException refused =
        assertThrows(
            InputException.class, () -> ProfileFile.read(text.replace(right, wrong), "meter.toml"));
    String message = String.valueOf(refused.getMessage());
    assertTrue(message.contains(said), message);
    assertTrue(message.matches("(?s)meter.toml(:[0-9]+:[0-9]+)?: .*"), message);
  }

  @Test
  void aProfileThatIsNotKnownIsNamedWithThoseThatAre() throws IOException {
    write("shed-tilt", TILT);
    InputException refused =
        assertThrows(InputException.class, () -> new MeterProfiles(folder).named("../shed-tilt"));
    String message = String.valueOf(refused.getMessage());
    assertTrue(
        message.contains("known: general-text-line, nmea-transducer, self-describing, shed-tilt"),
        message);
  }

  private void write(String id, String text) throws IOException {
    Files.writeString(folder.resolve(id + ".toml"), text);
  }
}
