package datumpeg.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the documents at the top level promise. */
class DocumentsTest {
  /** A word in backquotes that has a slash or one of our endings is a path from the top level. */
  private static final Pattern QUOTED =
      Pattern.compile("`([A-Za-z0-9_.-]+(?:/[A-Za-z0-9_.-]+)+|[A-Za-z0-9_-]+\\.(?:md|sh|cmd))`");

  private static final Pattern LINK = Pattern.compile("\\]\\((?!https?:|#)([^)#]+)");

  @ParameterizedTest
  @ValueSource(strings = {"README.md", "DEVELOPERS.md"})
  void everyPathNamedIsThere(String document) throws IOException {
    String text = read(document);
    Set<String> missing = new TreeSet<>();
    for (Pattern pattern : List.of(QUOTED, LINK)) {
      Matcher matcher = pattern.matcher(text);
      while (matcher.find()) {
        if (!Files.exists(House.ROOT.resolve(matcher.group(1)))) {
          missing.add(matcher.group(1));
        }
      }
    }
    assertEquals(Set.of(), missing, document + " names what is not there.");
  }

  @Test
  void developersMapNamesPathsAtAll() throws IOException {
    assertTrue(QUOTED.matcher(read("DEVELOPERS.md")).results().count() > 10);
  }

  @Test
  void developersMapNamesEveryRoom() throws IOException {
    String map = read("DEVELOPERS.md");
    for (String module : List.of("analysis", "device-bridge", "desktop-ui")) {
      Path sources = House.ROOT.resolve(module).resolve("src/main/java");
      try (Stream<Path> files = Files.walk(sources)) {
        List<String> unnamed =
            files
                .filter(file -> file.endsWith("package-info.java"))
                .map(file -> sources.relativize(file.getParent()).toString())
                .map(room -> room.replace('\\', '/').replaceFirst("^datumpeg/[^/]+/", ""))
                .map(room -> room.replace('/', '.'))
                .filter(room -> !map.contains("`" + room + "`"))
                .toList();
        assertEquals(List.of(), unnamed, "Rooms of " + module + " that DEVELOPERS.md leaves out.");
      }
    }
  }

  @Test
  void readmeSetsUpWithTwoCommands() throws IOException {
    Matcher block = Pattern.compile("```sh\\n(.*?)```", Pattern.DOTALL).matcher(read("README.md"));
    assertTrue(block.find());
    assertEquals(List.of("./datumpeg demo", "mvn verify"), block.group(1).lines().toList());
    assertTrue(Files.isExecutable(House.ROOT.resolve("datumpeg")));
  }

  @Test
  void continuousIntegrationRunsBothCommandsOfTheReadme() throws IOException {
    String script = read(".ci/run");
    assertTrue(script.contains("\nmvn -B -ntp verify"), script);
    assertTrue(script.contains("./datumpeg demo"), script);
    assertTrue(Files.isExecutable(House.ROOT.resolve(".ci/run")));
  }

  @Test
  void documentsHoldNoLooseEnds() throws IOException {
    for (String document : List.of("README.md", "DEVELOPERS.md", "CHANGELOG.md")) {
      assertFalse(
          Pattern.compile("TODO|TBD|FIXME|XXX|lorem", Pattern.CASE_INSENSITIVE)
              .matcher(read(document))
              .find(),
          document);
    }
  }

  private static String read(String document) throws IOException {
    return Files.readString(House.ROOT.resolve(document));
  }
}
