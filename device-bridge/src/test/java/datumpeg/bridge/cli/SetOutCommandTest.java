package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SetOutCommandTest {
  @TempDir Path folder;
  private SiteFolder site;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    site = new SiteFolder(folder);
    console = site.console;
  }

  @Test
  void sheetOfAFileNeedsNoRecord() throws IOException {
    assertEquals(0, console.run("set-out", "shed.toml"), console.err());
    assertEquals(golden("set-out.txt"), console.out().replace("\r\n", "\n"));
    assertTrue(!Files.exists(console.recordFile()));
  }

  @Test
  void imperialSheetIsInFeetInchesAndSixteenths() throws IOException {
    assertEquals(0, console.run("set-out", "shed.toml", "--imperial"), console.err());
    assertEquals(golden("set-out-imperial.txt"), console.out().replace("\r\n", "\n"));
  }

  @Test
  void sheetOfAStoredJobComesFromItsNewestRevision() throws IOException {
    SiteFolder.withJob(folder);
    site.write(
        "shed.toml",
        JobTexts.larkriseWith("[\"6 m\", \"6 m\", \"6 m\"]", "[\"5 m\", \"7 m\", \"6 m\"]"));
    console.run("job", "add", "shed.toml");
    assertEquals(0, console.run("set-out", "larkrise-01"), console.err());
    assertTrue(console.out().contains("from revision 2"), console.out());
    assertTrue(console.out().contains("line.A2   5000 mm"), console.out());
  }

  @Test
  void jsonKeepsMillimetresUnrounded() {
    assertEquals(0, console.run("set-out", "shed.toml", "--json", "--imperial"), console.err());
    JsonObject answer = JsonReader.readObject(console.out(), "standard output");
    assertEquals("mm", answer.text("unit"));
    JsonObject offsets = (JsonObject) answer.array("tables").get(0);
    assertEquals("offsets", offsets.text("table"));
    assertTrue(console.out().contains("\"length\": 8572.0"), console.out());
    // √(18000² + 9000²) = 20124.611797…
    assertTrue(console.out().contains("\"length\": 20124.611797"), console.out());
  }

  @Test
  void unknownJobAndMissingFileAreBadInput() throws IOException {
    SiteFolder.withJob(folder);
    assertEquals(2, console.run("set-out", "larkrise-02"));
    assertTrue(console.err().contains("the nearest is 'larkrise-01'"), console.err());
    assertEquals(2, console.run("set-out", "no.toml"));
    assertTrue(console.err().contains("There is no job file no.toml"), console.err());
  }

  private static String golden(String name) throws IOException {
    try (InputStream in = SetOutCommandTest.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("not beside the test: " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
