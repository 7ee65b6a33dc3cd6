package datumpeg.bridge.samples;

import datumpeg.analysis.job.Job;
import datumpeg.bridge.jobfile.JobFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Writes the generated files of {@code sample-readings/} anew. What a person wrote there, the job
 * files, the steps and the expected findings, is read or left alone. The same seeds give the same
 * bytes.
 */
public final class SampleReadings {
  private SampleReadings() {}

  /** Takes one argument, the folder {@code sample-readings}. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    for (Map.Entry<Path, String> file : generated(folder).entrySet()) {
      Files.writeString(folder.resolve(file.getKey()), file.getValue());
    }
  }

  /** The text of each generated file by its path within the folder. */
  static Map<Path, String> generated(Path folder) throws IOException {
    Map<Path, String> files = new LinkedHashMap<>();
    new Larkrise(job(folder, "larkrise-01"))
        .files()
        .forEach((name, text) -> files.put(Path.of("larkrise-01", name), text));
    new Quarrybend(job(folder, "quarrybend-02"))
        .files()
        .forEach((name, text) -> files.put(Path.of("quarrybend-02", name), text));
    return files;
  }

  private static Job job(Path folder, String id) throws IOException {
    Path file = folder.resolve(id).resolve("job.toml");
    return JobFile.read(Files.readString(file), file.toString());
  }
}
