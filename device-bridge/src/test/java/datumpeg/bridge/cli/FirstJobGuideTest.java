package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/guide/first-job.md tells a newcomer to type works, and prints what it shows. */
class FirstJobGuideTest {
  private static final String PROMPT = "$ ../../datumpeg ";
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  @TempDir Path folder;

  /** A line to type and what the page shows below it. */
  private record Step(String typed, List<String> shown) {
    List<String> words() {
      List<String> words = new ArrayList<>();
      Matcher matcher = WORD.matcher(typed);
      while (matcher.find()) {
        words.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
      }
      return words;
    }
  }

  @Test
  void everyLineOfTheFirstJobPrintsWhatThePageShows() throws IOException {
    copySample();
    TestConsole console = new TestConsole(folder);
    List<Step> steps = steps();
    assertTrue(steps.size() >= 14, steps.toString());
    for (Step step : steps) {
      int status = console.run(step.words().toArray(String[]::new));
      assertEquals(0, status, step.typed() + ": " + console.err());
      String missing = DocumentPage.firstMissing(step.shown(), console.out().lines().toList());
      assertEquals("", missing, step.typed() + " printed:\n" + console.out());
    }
    assertTrue(Files.size(folder.resolve("slab.html")) > 10_000);
  }

  private void copySample() throws IOException {
    Path sample = DocumentPage.ROOT.resolve("sample-readings/larkrise-01");
    try (Stream<Path> files = Files.list(sample)) {
      for (Path file : files.toList()) {
        Files.copy(file, folder.resolve(file.toFile().getName()));
      }
    }
  }

  private static List<Step> steps() throws IOException {
    List<Step> steps = new ArrayList<>();
    for (List<String> block : new DocumentPage("guide/first-job.md").blocks("console")) {
      for (String line : block) {
        if (line.startsWith("$ ")) {
          assertTrue(line.startsWith(PROMPT), line);
          steps.add(new Step(line.substring(PROMPT.length()), new ArrayList<>()));
        } else {
          steps.get(steps.size() - 1).shown().add(line);
        }
      }
    }
    return steps;
  }
}
