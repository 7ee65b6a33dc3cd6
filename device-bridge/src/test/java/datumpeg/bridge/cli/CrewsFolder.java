package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.bridge.jobfile.JobTexts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** A temporary folder whose record holds small jobs of two invented crews. */
final class CrewsFolder {
  final TestConsole console;
  private final Path folder;

  CrewsFolder(Path folder) {
    this.folder = folder;
    this.console = new TestConsole(folder);
  }

  /** Amber always with the meter spirit, Blue always with plumb-bob, one job a day. */
  static CrewsFolder withSixJobs(Path folder) throws IOException {
    CrewsFolder site = new CrewsFolder(folder);
    double[] amber = {0.02, 0.05, 0.03};
    double[] blue = {0.22, 0.25, 0.20};
    for (int i = 0; i < 3; i++) {
      site.job("amber-" + (i + 1), "Amber", "spirit", 2 + 2 * i, amber[i]);
      site.job("blue-" + (i + 1), "Blue", "plumb-bob", 3 + 2 * i, blue[i]);
    }
    return site;
  }

  /** A job with two columns read for plumb. */
  void job(String id, String crew, String meter, int day, double tiltDegrees) throws IOException {
    String toml =
        JobTexts.LARKRISE
            .replace("larkrise-01", id)
            .replace("\"Amber\"", "\"" + crew + "\"")
            .replace("[meters.spirit]", "[meters." + meter + "]");
    Files.writeString(folder.resolve(id + ".toml"), toml);
    ok("job", "add", id + ".toml");
    Files.writeString(
        folder.resolve(id + ".csv"),
        "stage,quantity,target,value,unit,meter,at\n"
            + reading("A2", tiltDegrees, meter, day)
            + reading("B2", tiltDegrees + 0.01 * (1 + day % 3), meter, day));
    ok("enter", id, id + ".csv");
  }

  static String reading(String column, double tiltDegrees, String meter, int day) {
    return String.format(
        Locale.ROOT,
        "lift,tilt,column.%s/across,%.3f,deg,%s,2026-03-%02dT09:00:00Z%n",
        column,
        tiltDegrees,
        meter,
        day);
  }

  void ok(String... words) {
    assertEquals(0, console.run(words), () -> String.join(" ", words) + ": " + console.err());
  }
}
