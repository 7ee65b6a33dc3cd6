package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** What the guide tells a newcomer to type works; the reference names what there is. */
class DocumentedCommandsTest {
  private static final Path ROOT = Path.of(System.getProperty("datumpeg.root", ".."));
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
  private static final Set<String> EVERYWHERE =
      Set.of("--record", "--json", "--help", "-h", "--version", "-V");

  @TempDir Path folder;

  @Test
  void theFirstJobOfTheGuideRunsAsItStands() throws IOException {
    Path sample = ROOT.resolve("sample-readings/larkrise-01");
    try (Stream<Path> files = Files.list(sample)) {
      for (Path file : files.toList()) {
        Files.copy(file, folder.resolve(file.toFile().getName()));
      }
    }
    TestConsole console = new TestConsole(folder);
    List<String> lines = typed(ROOT.resolve("docs/guide/first-job.md"));
    assertEquals(15, lines.size(), lines.toString());
    for (String line : lines) {
      assertEquals(0, console.run(words(line)), line + ": " + console.err());
      assertTrue(console.out().length() > 0, line + " prints something");
    }
    assertTrue(Files.exists(folder.resolve("slab.html")));
  }

  /** The lines after a $ in blocks marked console, less the name of the program. */
  private static List<String> typed(Path page) throws IOException {
    List<String> lines = new ArrayList<>();
    boolean inside = false;
    for (String line : Files.readAllLines(page)) {
      if (line.startsWith("```")) {
        inside = line.equals("```console");
      } else if (inside && line.startsWith("$ ../../datumpeg ")) {
        lines.add(line.substring("$ ../../datumpeg ".length()));
      }
    }
    return lines;
  }

  private static String[] words(String line) {
    List<String> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(line);
    while (matcher.find()) {
      words.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
    }
    return words.toArray(String[]::new);
  }

  @Test
  void theReferenceNamesEveryCommandWithItsOptions() throws IOException {
    Set<String> documented = new TreeSet<>();
    for (String line : Files.readAllLines(ROOT.resolve("docs/reference-commands.md"))) {
      if (line.startsWith("| `") && !line.startsWith("| `desktop")) {
        documented.add(row(line));
      }
    }
    assertEquals(existing(), documented);
  }

  /** Command and options of one row of the table, such as "limits show --size". */
  private static String row(String line) {
    String[] cells = line.split("\\|", -1);
    String command = cells[1].replace("`", "").strip().replaceAll("( [A-Z\\[][^ ]*)+$", "");
    Set<String> options = new TreeSet<>();
    for (String option : cells[2].replace("`", "").strip().split(" +", -1)) {
      if (!option.isEmpty()) {
        options.add(option);
      }
    }
    return (command + " " + String.join(" ", options)).strip();
  }

  private Set<String> existing() {
    DatumpegCommand program =
        new DatumpegCommand(
            new Console(
                System.out,
                System.err,
                System.in,
                java.util.Map.of("HOME", folder.toString()),
                java.time.Clock.systemUTC(),
                folder));
    CommandLine line = new CommandLine(program);
    BridgeCommands.of(program).forEach(line::addSubcommand);
    Set<String> found = new TreeSet<>();
    line.getSubcommands().values().forEach(command -> collect("", command, found));
    return found;
  }

  private static void collect(String before, CommandLine command, Set<String> found) {
    CommandSpec spec = command.getCommandSpec();
    String name = (before + " " + spec.name()).strip();
    if (!command.getSubcommands().isEmpty()) {
      command.getSubcommands().values().forEach(inner -> collect(name, inner, found));
      return;
    }
    Set<String> options = new TreeSet<>();
    spec.options().stream()
        .map(option -> option.longestName())
        .filter(option -> !EVERYWHERE.contains(option))
        .forEach(options::add);
    found.add((name + " " + String.join(" ", options)).strip());
  }
}
