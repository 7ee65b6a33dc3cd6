package datumpeg.bridge.link.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureEntry.Direction;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import datumpeg.bridge.link.replay.CaptureHeader.CapturedLink;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureReaderTest {
  private static final String HEADER =
      """
      {"capture":1,"job":"larkrise-01","stage":"arrival","links":{"L1":{"link":"serial:/dev/ttyUSB0","meter":"laser","profile":"p@00"}}}
      """;
  private static final String RX =
      """
      {"n":1,"t":"2026-03-02T08:15:00.250Z","mono_ns":250000000,"link":"L1","dir":"rx","channel":"data","hex":"312e35206d0d0a"}
      """;
  private static final String ACT =
      """
      {"n":2,"t":"2026-03-02T08:15:01Z","mono_ns":1000000000,"act":"accept","target":"slab.A1-slab.B1","face":1,"text":"Länge"}
      """;

  private static CaptureReader reader(String text) {
    return reader(text.getBytes(StandardCharsets.UTF_8));
  }

  private static CaptureReader reader(byte[] content) {
    return new CaptureReader(new ByteArrayInputStream(content), "morning.jsonl");
  }

  private static List<CaptureEntry> readAll(CaptureReader reader) {
    List<CaptureEntry> entries = new ArrayList<>();
    for (Optional<CaptureEntry> next = reader.next(); next.isPresent(); next = reader.next()) {
      entries.add(next.get());
    }
    return entries;
  }

  @Test
  void aCaptureIsReadInOrder() {
    CaptureReader reader = reader(HEADER + RX + ACT);
    assertEquals(
        new CaptureHeader(
            "larkrise-01",
            "arrival",
            Map.of("L1", new CapturedLink("serial:/dev/ttyUSB0", "laser", "p@00"))),
        reader.header());
    assertEquals(
        List.of(
            new Transfer(
                1,
                Instant.parse("2026-03-02T08:15:00.250Z"),
                250_000_000,
                "L1",
                Direction.RX,
                "data",
                Bytes.of("1.5 m\r\n".getBytes(StandardCharsets.UTF_8))),
            new Act(
                2,
                Instant.parse("2026-03-02T08:15:01Z"),
                1_000_000_000,
                Kind.ACCEPT,
                "slab.A1-slab.B1",
                1,
                "Länge")),
        readAll(reader));
    assertEquals(OptionalLong.empty(), reader.tornLineNumber());
  }

  @Test
  void aCaptureWithoutLinesIsEmpty() {
    assertEquals(List.of(), readAll(reader(HEADER)));
    assertEquals(List.of(), readAll(reader(HEADER.strip())));
  }

  @Test
  void aLastLineTornAnywhereIsLeftOutAndReported() {
    byte[] whole = (HEADER + RX + ACT).getBytes(StandardCharsets.UTF_8);
    int lastStart = (HEADER + RX).getBytes(StandardCharsets.UTF_8).length;
    // Without its line end alone, the last line is whole: length - 1 is not torn.
    for (int length = lastStart + 1; length < whole.length - 1; length++) {
      CaptureReader reader = reader(Bytes.of(whole, 0, length).toArray());
      assertEquals(1, readAll(reader).size());
      assertEquals(OptionalLong.of(3), reader.tornLineNumber());
    }
    CaptureReader unended = reader(Bytes.of(whole, 0, whole.length - 1).toArray());
    assertEquals(2, readAll(unended).size());
    assertEquals(OptionalLong.empty(), unended.tornLineNumber());
  }

  @Test
  void aTailOfZerosLeftByAPowerCutIsATornLine() {
    CaptureReader reader = reader(HEADER + RX + "\0".repeat(300));
    assertEquals(1, readAll(reader).size());
    assertEquals(OptionalLong.of(3), reader.tornLineNumber());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"n\":1|\"n\":2|'n' is 2; expected 1",
        "\"n\":1,||'n' is missing; expected a whole number",
        "\"t\":\"2026-03-02T08:15:00.250Z\"|\"t\":\"yesterday\"|'t' is 'yesterday'; expected a time",
        "\"mono_ns\":250000000|\"mono_ns\":\"x\"|'mono_ns' is a text; expected a whole number",
        "\"mono_ns\":250000000|\"mono_ns\":1.5|mono_ns",
        "\"mono_ns\":250000000|\"mono_ns\":99999999999999999999|mono_ns",
        "\"L1\"|\"L2\"|link 'L2' is not in the first line",
        "\"rx\"|\"up\"|'dir' is 'up'; expected one of rx, tx",
        "312e35|312e3|not pairs of hexadecimal digits",
        "312e35206d0d0a|``|'hex' is empty",
        "\"hex\"|\"hax\"|'hex' is missing",
        "\"dir\"|\"more\":\"1\",\"dir\"|unknown key 'more'",
        "\"dir\"|\"n\":1,\"dir\"|",
        "}|}}|",
        "\"hex\"|[|",
      })
  void anyOtherDamageNamesFileAndLine(String part, String changed, String reason) {
    String damaged = RX.replace(part, changed == null ? "" : changed);
    CaptureReader reader = reader(HEADER + damaged + ACT);
    InputException refused = assertThrows(InputException.class, () -> readAll(reader));
    String message = String.valueOf(refused.getMessage());
    assertTrue(message.startsWith("The capture morning.jsonl is damaged at line 2: "), message);
    assertTrue(message.contains(reason == null ? "" : reason), message);
  }

  @Test
  void aFaceOtherThanOneAndTwoIsDamage() {
    CaptureReader reader = reader(HEADER + RX + ACT.replace("\"face\":1", "\"face\":3"));
    InputException refused = assertThrows(InputException.class, () -> readAll(reader));
    assertTrue(
        String.valueOf(refused.getMessage()).contains("line 3: 'face' is 3; expected 1 or 2"));
  }

  @Test
  void aTornLineInTheMiddleIsDamage() {
    CaptureReader reader = reader(HEADER + "{\"n\":1,\"t\n" + ACT);
    assertThrows(InputException.class, () -> readAll(reader));
  }

  @Test
  void aLineWithoutEndIsNotReadIntoMemory() {
    CaptureReader reader = reader(HEADER + "x".repeat(2_000_000));
    InputException refused = assertThrows(InputException.class, () -> readAll(reader));
    assertTrue(String.valueOf(refused.getMessage()).contains("line 2: it is longer than"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\n",
        "hello\n",
        "[]\n",
        "{\"capture\":1,\"job\":\"a\"",
        "{\"capture\":2,\"job\":\"a\",\"stage\":\"b\",\"links\":{}}\n",
        "{\"capture\":1,\"job\":\"a\",\"stage\":\"b\"}\n",
        "{\"capture\":1,\"job\":\"a\",\"stage\":\"b\",\"links\":{\"L1\":\"x\"}}\n",
        "{\"capture\":1,\"job\":\"a\",\"stage\":\"b\",\"links\":{},\"more\":1}\n"
      })
  void aFileThatIsNoCaptureIsRefused(String text) {
    InputException refused = assertThrows(InputException.class, () -> reader(text));
    String message = String.valueOf(refused.getMessage());
    assertTrue(
        message.startsWith("morning.jsonl is not a capture this program reads: in its first line "),
        message);
  }

  @Test
  void aMissingFileIsNamed() {
    InputException refused =
        assertThrows(InputException.class, () -> CaptureReader.open(Path.of("none.jsonl")));
    assertEquals("There is no capture none.jsonl.", refused.getMessage());
  }
}
