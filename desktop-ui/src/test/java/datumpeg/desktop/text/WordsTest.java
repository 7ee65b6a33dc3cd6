package datumpeg.desktop.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.analysis.measuring.Stage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WordsTest {
  private static final Pattern KEY = Pattern.compile("\"([a-z]+\\.[a-z.-]+)\"");
  private static final Set<String> BUILT =
      Set.of(
          "datumpeg.",
          "settings.",
          "measure.toward.",
          "job.",
          "building.",
          "sections.",
          "slab.",
          "openings.",
          "meters.",
          "mullions.",
          "anchors.",
          "gutters.",
          "flatness.",
          "stages.",
          "temperature.",
          "props.",
          "points.",
          "decision.",
          "form.at.",
          "form.field.",
          "form.group.",
          "form.example.",
          "form.choice.",
          "form.now.",
          "form.table.",
          "trend.of-job.",
          "form.aside.",
          "signoff.state.",
          "signoff.how.",
          "signoff.answer.",
          "signoff.item.",
          "act.",
          "measure.end-",
          "measure.foot",
          "measure.left.",
          "measure.link.",
          "measure.profile.",
          "measure.tones",
          "check.",
          "stage.",
          "standing.",
          "trend-matter.",
          "trend-choice.",
          "screen.",
          "window.css",
          "record.db");

  private final Words words = Words.of(Locale.ROOT);
  private final ResourceBundle bundle = ResourceBundle.getBundle(Words.BUNDLE, Locale.ROOT);

  @Test
  void numbersAreNotGrouped() {
    assertEquals("12345 readings", words.count("jobs.readings", 12345));
    assertEquals("1 reading", words.count("jobs.readings", 1));
    assertEquals("0 readings", words.count("jobs.readings", 0));
  }

  @Test
  void checkAndStageWithoutANameAreCalledByTheirId() {
    assertEquals("Slab squareness", words.check("slab-square"));
    assertEquals("rope-tension", words.check("rope-tension"));
    assertEquals("curing", words.stage("curing"));
  }

  @Test
  void everyStandingAndEveryStandardStageHasAWord() {
    for (Standing standing : Standing.values()) {
      assertFalse(words.standing(standing).isEmpty());
    }
    for (Stage stage : Stage.STANDARD) {
      assertFalse(words.stage(stage.id()).equals(stage.id()), stage.id());
    }
  }

  @Test
  void everyKeyOfTheCodeHasATextAndEveryTextItsUse() throws IOException {
    Set<String> used = keysInTheCode();
    Set<String> needed = new TreeSet<>();
    for (String key : used) {
      if (bundle.containsKey(key + ".one")) {
        needed.add(key + ".one");
        needed.add(key + ".many");
      }
      if (bundle.containsKey(key) || !bundle.containsKey(key + ".one")) {
        needed.add(key);
      }
    }
    Set<String> texts = new TreeSet<>(bundle.keySet());
    texts.removeIf(key -> BUILT.stream().anyMatch(key::startsWith));
    assertEquals(texts, needed);
  }

  /** Every literal that looks like a key, in the main code of the window. */
  private static Set<String> keysInTheCode() throws IOException {
    Path code =
        Path.of(System.getProperty("datumpeg.root"), "desktop-ui/src/main/java/datumpeg/desktop");
    Set<String> keys = new TreeSet<>();
    try (Stream<Path> files = Files.walk(code)) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        List<String> found =
            KEY.matcher(Files.readString(file)).results().map(match -> group(match)).toList();
        keys.addAll(found);
      }
    }
    keys.removeIf(key -> key.startsWith("os.") || key.startsWith("glass."));
    keys.removeIf(key -> BUILT.stream().anyMatch(key::startsWith));
    assertTrue(keys.size() > 20, "The search for keys finds too few: " + keys);
    return keys;
  }

  private static String group(MatchResult match) {
    return match.group(1);
  }
}
