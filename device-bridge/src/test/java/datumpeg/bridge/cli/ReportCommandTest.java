package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportCommandTest {
  @TempDir Path folder;
  private TestConsole console;

  @BeforeEach
  void open() throws IOException {
    console = SiteFolder.withReadings(folder).console;
  }

  @Test
  void writesOnePageThatNamesTheHeadsToKeep() throws IOException {
    assertEquals(0, console.run("report", "larkrise-01", "-o", "slab.html"), console.err());
    String page = Files.readString(folder.resolve("slab.html"));
    assertTrue(page.contains("Larkrise"), "the site is named");
    assertFalse(page.contains("src=\"http"), "nothing is fetched");
    assertFalse(Files.exists(folder.resolve("slab.html.unfinished")));
    console.run("verify", "--json");
    String head = console.out().replaceAll("(?s).*\"heads\"[^\"]*\"([^\"]+)\".*", "$1");
    assertTrue(head.matches("[0-9a-f-]{36}:[0-9]+:[0-9a-f]{64}"), console.out());
    String unspaced = page.replaceAll("<[^>]*>|\\s", "");
    assertTrue(unspaced.contains(head), "a head of the record stands on the page");
  }

  @Test
  void theSameRecordGivesTheSamePage() throws IOException {
    console.run("report", "larkrise-01", "--stage", "arrival", "-o", "one.html");
    console.run("report", "larkrise-01", "--stage", "arrival", "-o", "two.html");
    assertEquals(
        Files.readString(folder.resolve("one.html")), Files.readString(folder.resolve("two.html")));
  }

  @Test
  void refusesPlacesAndNamesItCannotWrite() throws IOException {
    assertEquals(2, console.run("report", "larkrise-01", "-o", "nowhere/slab.html"));
    assertTrue(console.err().contains("there is no folder"), console.err());
    assertEquals(2, console.run("report", "larkrise-01", "-o", "slab.doc"));
    assertTrue(console.err().contains("ending in .html"), console.err());
    Files.createDirectory(folder.resolve("slab.html"));
    assertEquals(2, console.run("report", "larkrise-01", "-o", "slab.html"));
    assertTrue(console.err().contains("it is a folder"), console.err());
  }

  @Test
  void refusesAStageOrJobThatIsNot() {
    assertEquals(2, console.run("report", "larkrise-01", "--stage", "arival", "-o", "x.html"));
    assertTrue(console.err().contains("arrival"), console.err());
    assertEquals(2, console.run("report", "larkrise-1", "-o", "x.html"));
    assertTrue(console.err().contains("larkrise-01"), console.err());
  }
}
