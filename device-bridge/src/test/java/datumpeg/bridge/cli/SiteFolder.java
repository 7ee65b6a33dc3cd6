package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.bridge.jobfile.JobTexts;
import datumpeg.bridge.link.ble.Patience;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** A temporary folder with a job file, a table and a record, and the program run in it. */
final class SiteFolder {
  static final String SLAB =
      """
      stage,quantity,target,value,unit,meter
      arrival,distance,slab.A1-slab.A4,18.004,m,laser
      arrival,distance,slab.B4-slab.A1,20130,mm,laser
      arrival,distance,slab.A1-slab.B1,"9,002",m,laser
      """;

  private final Path folder;
  final TestConsole console;

  SiteFolder(Path folder) throws IOException {
    this(folder, Map.of(), Patience.USUAL);
  }

  SiteFolder(Path folder, Map<String, String> environment, Patience patience) throws IOException {
    this.folder = folder;
    this.console = new TestConsole(folder, environment, patience);
    write("shed.toml", JobTexts.LARKRISE);
    write("slab.csv", SLAB);
  }

  /** With the job in the record. */
  static SiteFolder withJob(Path folder) throws IOException {
    SiteFolder site = new SiteFolder(folder);
    assertEquals(0, site.console.run("job", "add", "shed.toml"), site.console.err());
    return site;
  }

  /** With the job and the three readings of the table in the record. */
  static SiteFolder withReadings(Path folder) throws IOException {
    SiteFolder site = withJob(folder);
    assertEquals(0, site.console.run("enter", "larkrise-01", "slab.csv"), site.console.err());
    return site;
  }

  void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }
}
