package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.conform.LimitRow;
import datumpeg.analysis.measuring.CheckNames;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.limits.LimitsTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of the guide are read by the program, and its worked numbers hold. */
class GuideExamplesTest {
  private static final Path GUIDE =
      Path.of(System.getProperty("datumpeg.root", "..")).resolve("docs/guide");

  @TempDir Path folder;

  @Test
  void exampleJobIsTakenInAndItsTablesEntered() throws IOException {
    SiteFolder site = new SiteFolder(folder);
    site.write("guide.toml", blocks("job-file.md", "toml job").get(0));
    assertEquals(0, site.console.run("job", "add", "guide.toml"), site.console.err());
    List<String> tables = blocks("readings-table.md", "csv readings");
    assertEquals(2, tables.size());
    for (String table : tables) {
      site.write("guide.csv", table);
      assertEquals(0, site.console.run("enter", "elderbrook-03", "guide.csv"), site.console.err());
    }
  }

  @Test
  void numbersWorkedInTheGuideHold() throws IOException {
    SetOut setOut = JobFile.read(blocks("job-file.md", "toml job").get(0), "job-file.md").setOut();
    assertEquals(0.088, setOut.portalFrameXMetres(1), 1e-9);
    assertEquals(4.050, setOut.portalFrameXMetres(2), 1e-9);
    assertEquals(8.050, setOut.portalFrameXMetres(3), 1e-9);
    assertEquals(12.012, setOut.portalFrameXMetres(4), 1e-9);
    assertEquals(0.310, setOut.columnLineOffsetMetres(), 1e-9);
    assertEquals(9.380, setOut.clearSpanMetres(), 1e-9);
    assertEquals(9.370, setOut.tipDistanceMetres().orElseThrow(), 1e-9);
    assertEquals(0.083, setOut.bottomCornerShortfallMetres(), 5e-4);
    double pitch = setOut.pitchFromRafterLengthRadians().orElseThrow();
    assertEquals(12.02, StrictMath.toDegrees(pitch), 5e-3);
    assertEquals(-2.35, SetOut.apexMovePerTipDistance(pitch), 5e-3);
    assertEquals(2.880, setOut.openings().get(0).widthMetres(), 1e-9);
  }

  @Test
  void everyRowOfTheLimitsTableStandsInTheGuideWithItsRule() throws IOException {
    String guide = Files.readString(GUIDE.resolve("limits.md"));
    for (LimitRow row : LimitsTable.ofProgram().rows()) {
      String line = "| `" + row.id() + "` | " + RuleWords.of(row.rule()) + " |";
      assertTrue(guide.contains(line), line);
    }
  }

  @Test
  void everyCheckStandsInTheGuide() throws IOException {
    String guide = Files.readString(GUIDE.resolve("job-file.md"));
    assertTrue(guide.contains("Checks: " + String.join(", ", CheckNames.ALL) + "."), guide);
  }

  @Test
  void theServiceOfTheGuideRunsACommandThatIsUnderstood() throws IOException {
    String unit = blocks("collect.md", "ini").get(0);
    List<String> start =
        unit.lines().filter(line -> line.startsWith("ExecStart=")).map(String::strip).toList();
    assertEquals(1, start.size());
    String[] words = start.get(0).replaceFirst("ExecStart=\\S+/datumpeg ", "").split(" ");
    SiteFolder site = SiteFolder.withJob(folder);
    // The meter of the guide is not here, which is said instead of waiting for it.
    words[words.length - 1] = "serial";
    assertEquals(2, site.console.run(words));
    assertTrue(site.console.err().contains("The link 'serial' cannot be used"), site.console.err());
    assertTrue(unit.contains("SuccessExitStatus=143"), unit);
  }

  private static List<String> blocks(String file, String kind) throws IOException {
    List<String> blocks =
        Pattern.compile("```" + kind + "\\R(.*?)```", Pattern.DOTALL)
            .matcher(Files.readString(GUIDE.resolve(file)))
            .results()
            .map(match -> match.group(1))
            .toList();
    assertFalse(blocks.isEmpty(), kind);
    return blocks;
  }
}
