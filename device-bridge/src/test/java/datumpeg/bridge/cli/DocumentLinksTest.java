package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every link between the documents leads to a file, and to a heading where it names one. */
class DocumentLinksTest {
  private static final Path DOCS = DocumentPage.ROOT.resolve("docs");
  private static final Pattern LINK =
      Pattern.compile("\\]\\((?!https?:)([^)#\\s]*)(?:#([^)\\s]+))?\\)");

  @Test
  void everyLinkLeadsSomewhere() throws IOException {
    Set<String> lost = new TreeSet<>();
    int count = 0;
    for (Path page : pages()) {
      Matcher link = LINK.matcher(Files.readString(page));
      while (link.find()) {
        count++;
        String file = link.group(1);
        Path target = file.isEmpty() ? page : page.resolveSibling(file).normalize();
        String heading = link.group(2);
        if (!Files.exists(target) || (heading != null && !headings(target).contains(heading))) {
          lost.add(DOCS.relativize(page) + ": " + link.group());
        }
      }
    }
    assertEquals(Set.of(), lost);
    assertTrue(count > 40, count + " links");
  }

  @Test
  void theIndexNamesEveryPage() throws IOException {
    String index = Files.readString(DOCS.resolve("README.md"));
    List<String> unnamed =
        pages().stream()
            .map(page -> DOCS.relativize(page).toString().replace('\\', '/'))
            .filter(page -> !page.equals("README.md") && !index.contains("(" + page))
            .toList();
    assertEquals(List.of(), unnamed);
  }

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(DOCS)) {
      return files.filter(file -> file.toString().endsWith(".md")).sorted().toList();
    }
  }

  /** Headings as a link names them: lower case, words joined by -, without other marks. */
  private static List<String> headings(Path page) throws IOException {
    return Files.readAllLines(page).stream()
        .filter(line -> line.startsWith("#"))
        .map(line -> line.replaceFirst("^#+ ", "").toLowerCase(Locale.ROOT))
        .map(line -> line.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'))
        .toList();
  }
}
