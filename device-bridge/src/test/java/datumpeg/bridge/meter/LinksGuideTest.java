package datumpeg.bridge.meter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.quantity.Unit;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.GeneralTextLine;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.replay.CaptureEntry;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import datumpeg.bridge.link.replay.CaptureReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What docs/guide/links.md shows is what the program does. */
class LinksGuideTest {
  private String guide = "";

  @BeforeEach
  void readGuide() throws IOException {
    guide = Files.readString(Path.of(System.getProperty("datumpeg.root"), "docs/guide/links.md"));
  }

  private static String between(String text, String start, String end) {
    int from = text.indexOf(start) + start.length();
    return text.substring(from, text.indexOf(end, from));
  }

  /** The texts between backquotes. */
  private static List<String> quoted(String text) {
    List<String> quoted = new ArrayList<>();
    String[] parts = text.split("`", -1);
    for (int index = 1; index < parts.length; index += 2) {
      quoted.add(parts[index]);
    }
    return quoted;
  }

  @Test
  void everyExampleOfAnAcceptedLineIsAReading() {
    GeneralTextLine decoding = new GeneralTextLine(Unit.METRE);
    List<String> lines = quoted(between(guide, "| accepted | examples |\n|---|---|\n", "\n\n"));
    assertTrue(lines.size() >= 14, lines.toString());
    for (String line : lines) {
      Bytes frame = Bytes.of(line.getBytes(StandardCharsets.UTF_8));
      assertInstanceOf(Measured.class, decoding.decode(frame), line);
    }
  }

  @Test
  void theExampleOfACaptureReadsBack() {
    String capture = between(guide, "```json\n", "```");
    List<CaptureEntry> entries = new ArrayList<>();
    try (CaptureReader reader =
        new CaptureReader(
            new ByteArrayInputStream(capture.getBytes(StandardCharsets.UTF_8)), "guide")) {
      for (Optional<CaptureEntry> next = reader.next(); next.isPresent(); next = reader.next()) {
        entries.add(next.get());
      }
      assertTrue(reader.tornLineNumber().isEmpty());
    }
    assertEquals(3, entries.size());
    Transfer transfer = assertInstanceOf(Transfer.class, entries.get(1));
    assertEquals("9.0012 m\r\n", new String(transfer.bytes().toArray(), StandardCharsets.US_ASCII));
  }

  @Test
  void theExampleOfALinkReads() {
    String link = between(guide, "path: `", "`");
    assertEquals(link, LinkAddress.parse(link).text());
  }

  @Test
  void theExampleOfAProfileReads() {
    MeterProfile profile =
        ProfileFile.read(between(guide, "```toml\n", "```"), "docs/guide/links.md");
    assertEquals("shed-tilt", profile.id());
    assertEquals(4800, profile.serial().baud());
    assertEquals(new MeterLanguage.TextLines(80, Unit.DEGREE), profile.language());
  }

  /** The other languages stand there behind #: each is put in the place of the first. */
  @Test
  void theOtherLanguagesOfTheExampleReadToo() {
    String example = between(guide, "```toml\n", "```");
    int first = example.indexOf("[text-line]");
    String head = example.substring(0, first);
    String[] languages = example.substring(first).split("\n\n# \\[", -1);
    assertEquals(7, languages.length);
    for (int i = 1; i < languages.length; i++) {
      String table = "[" + languages[i].replaceAll("(?m)^# ", "");
      MeterProfile profile = ProfileFile.read(head + table, "docs/guide/links.md");
      assertTrue(table.startsWith("[" + profile.language().word() + "]"), table);
    }
    String further = guide.substring(guide.indexOf("Two more keys"));
    String keys = between(further, "```toml\n", "```").replaceAll("(?m)^# ", "");
    int accuracy = keys.indexOf("[accuracy]");
    MeterProfile whole =
        ProfileFile.read(
            keys.substring(0, accuracy) + example + keys.substring(accuracy),
            "docs/guide/links.md");
    assertEquals(Bytes.ofHex("4d0d"), whole.trigger());
    assertNotNull(whole.instrument());
  }
}
