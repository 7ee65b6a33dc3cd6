package datumpeg.bridge.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Holds the generated files against those that are committed. With the system property {@code
 * datumpeg.samples} set to {@code write} it writes those anew first.
 */
class SampleReadingsTest {
  private static final Path SAMPLES =
      Path.of(System.getProperty("datumpeg.root"), "sample-readings");
  private static final Set<String> BY_HAND =
      Set.of("job.toml", "steps.txt", "expected-findings.csv");

  @Test
  void theGeneratedFilesAreThoseThatAreCommitted(@TempDir Path folder) throws IOException {
    if ("write".equals(System.getProperty("datumpeg.samples"))) {
      SampleReadings.main(new String[] {SAMPLES.toString()});
    }
    copyJobFiles(folder);
    SampleReadings.main(new String[] {folder.toString()});
    for (Path file : SampleReadings.generated(SAMPLES).keySet()) {
      assertEquals(
          Files.readString(SAMPLES.resolve(file)),
          Files.readString(folder.resolve(file)),
          () -> file + " differs from what the generator makes; see sample-readings/README.md");
    }
  }

  private static void copyJobFiles(Path folder) throws IOException {
    for (String job : jobs()) {
      Files.createDirectories(folder.resolve(job));
      Files.copy(SAMPLES.resolve(job).resolve("job.toml"), folder.resolve(job).resolve("job.toml"));
    }
  }

  @Test
  void everyFileIsGeneratedOrWrittenByHand() throws IOException {
    Map<Path, String> generated = SampleReadings.generated(SAMPLES);
    Set<String> unknown = new TreeSet<>();
    for (String job : jobs()) {
      try (Stream<Path> files = Files.list(SAMPLES.resolve(job))) {
        files
            .map(file -> file.getFileName().toString())
            .filter(name -> !BY_HAND.contains(name))
            .filter(name -> !generated.containsKey(Path.of(job, name)))
            .forEach(unknown::add);
      }
    }
    assertEquals(Set.of(), unknown);
    assertEquals(2, jobs().size());
  }

  @Test
  void everyGeneratedFileIsNamedInTheSteps() throws IOException {
    for (Path file : SampleReadings.generated(SAMPLES).keySet()) {
      String steps = Files.readString(SAMPLES.resolve(file).resolveSibling("steps.txt"));
      String name = file.getFileName().toString();
      assertTrue(name.equals("truth.toml") || steps.contains(" " + name), name);
    }
  }

  private static Set<String> jobs() throws IOException {
    try (Stream<Path> folders = Files.list(SAMPLES)) {
      return folders
          .filter(Files::isDirectory)
          .map(folder -> folder.getFileName().toString())
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }
}
