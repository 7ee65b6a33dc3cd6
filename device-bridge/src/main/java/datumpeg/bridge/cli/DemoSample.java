package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One job of the sample readings.
 *
 * @param folder where its files are; its name is the job's id
 * @param steps what its crew did: the words of one command each, in order
 */
record DemoSample(Path folder, List<List<String>> steps) {
  private static final String SAMPLES = "sample-readings";
  private static final String STEPS = "steps.txt";
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  DemoSample {
    steps = steps.stream().map(List::copyOf).toList();
  }

  String job() {
    return folder.getFileName().toString();
  }

  /**
   * All samples, by their names.
   *
   * @param places looked through in their order, each with the folders above it
   * @throws InputException if there are no samples
   * @throws OuterWorldException if they cannot be read
   */
  static List<DemoSample> all(List<Path> places) {
    Path samples = folder(places);
    try (Stream<Path> folders = Files.list(samples)) {
      List<DemoSample> found = new ArrayList<>();
      for (Path folder : folders.filter(DemoSample::isSample).sorted().toList()) {
        found.add(new DemoSample(folder, steps(Files.readAllLines(folder.resolve(STEPS)))));
      }
      if (found.isEmpty()) {
        throw new InputException(
            "The folder " + samples + " holds no sample job; expected folders with " + STEPS + ".");
      }
      return List.copyOf(found);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The sample readings in " + samples + " could not be read: " + e.getMessage() + ".", e);
    }
  }

  private static boolean isSample(Path folder) {
    return Files.isRegularFile(folder.resolve(STEPS));
  }

  private static Path folder(List<Path> places) {
    return places.stream()
        .flatMap(place -> Stream.iterate(place, folder -> folder != null, Path::getParent))
        .map(folder -> folder.resolve(SAMPLES))
        .filter(Files::isDirectory)
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    "The demo needs the folder "
                        + SAMPLES
                        + ", which was not found in, or above, "
                        + places.stream().map(Path::toString).collect(Collectors.joining(" and "))
                        + "."));
  }

  /** Empty lines and lines that begin with # say nothing; double quotes hold a word together. */
  static List<List<String>> steps(List<String> lines) {
    return lines.stream()
        .map(String::strip)
        .filter(line -> !line.isEmpty() && !line.startsWith("#"))
        .map(DemoSample::words)
        .toList();
  }

  private static List<String> words(String line) {
    List<String> words = new ArrayList<>();
    Matcher match = WORD.matcher(line);
    while (match.find()) {
      words.add(match.group(1) != null ? match.group(1) : match.group(2));
    }
    return words;
  }
}
