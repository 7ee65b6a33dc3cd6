package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonValue;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** docs/reference-commands.md names the commands there are, with their options and documents. */
class CommandReferenceTest {
  private static final Set<String> EVERYWHERE = Set.of("--record", "--json", "--help", "--version");

  @TempDir Path folder;

  @Test
  void everyCommandIsNamedWithItsOptions() throws IOException {
    Map<String, String> documented = new TreeMap<>();
    for (List<String> row :
        new DocumentPage("reference-commands.md").table("command | options |")) {
      if (!row.get(0).startsWith("desktop")) { // of another module, whose test names it
        documented.put(row.get(0), row.get(1));
      }
    }
    assertEquals(existing(), documented);
  }

  @Test
  void everyExitStatusIsNamed() throws IOException {
    Set<String> documented = new TreeSet<>();
    new DocumentPage("reference-commands.md")
        .table("status | meaning |")
        .forEach(row -> documented.add(row.get(0)));
    Set<String> existing = new TreeSet<>();
    line()
        .getCommandSpec()
        .usageMessage()
        .exitCodeList()
        .keySet()
        .forEach(code -> existing.add(code.strip()));
    assertEquals(existing, documented);
  }

  private Map<String, String> existing() {
    Map<String, String> found = new TreeMap<>();
    line().getSubcommands().values().forEach(command -> collect("", command, found));
    return found;
  }

  private CommandLine line() {
    DatumpegCommand program =
        new DatumpegCommand(
            new Console(
                System.out,
                System.err,
                System.in,
                Map.of("HOME", folder.toString()),
                Clock.systemUTC(),
                folder));
    CommandLine line = new CommandLine(program);
    BridgeCommands.of(program).forEach(line::addSubcommand);
    return line;
  }

  private static void collect(String before, CommandLine command, Map<String, String> found) {
    CommandSpec spec = command.getCommandSpec();
    String name = (before + " " + spec.name()).strip();
    if (!command.getSubcommands().isEmpty()) {
      command.getSubcommands().values().forEach(inner -> collect(name, inner, found));
      return;
    }
    String operands =
        spec.positionalParameters().stream()
            .map(parameter -> " " + parameter.paramLabel())
            .collect(Collectors.joining());
    String options =
        spec.options().stream()
            .filter(option -> !EVERYWHERE.contains(option.longestName()))
            .map(CommandReferenceTest::synopsis)
            .sorted()
            .collect(Collectors.joining(" "));
    found.put(name + operands, options);
  }

  /** As the page writes an option: in brackets if it may be left out, with … if it may repeat. */
  private static String synopsis(OptionSpec option) {
    String text =
        option.longestName() + (option.arity().max() == 0 ? "" : " " + option.paramLabel());
    return (option.required() ? text : "[" + text + "]") + (option.isMultiValue() ? "…" : "");
  }

  @Test
  void everyDocumentHasTheFormThePageShows() throws IOException {
    Map<String, String> documented = new LinkedHashMap<>();
    new DocumentPage("reference-commands.md")
        .table("with `--json` | form |")
        .forEach(row -> documented.put(row.get(0), row.get(1)));
    Map<String, String> printed = printed();
    assertEquals(printed.keySet(), documented.keySet());
    documented.forEach(
        (command, form) ->
            assertTrue(
                DocumentPage.fits(form, printed.getOrDefault(command, "")),
                command + " printed " + printed.get(command)));
  }

  /** The form of each command's document, from a session with the sample job. */
  private Map<String, String> printed() throws IOException {
    Path sample = DocumentPage.ROOT.resolve("sample-readings/larkrise-01");
    for (String file : List.of("job.toml", "levels.csv", "arrival.capture.jsonl")) {
      Files.copy(sample.resolve(file), folder.resolve(file));
    }
    TestConsole console = new TestConsole(folder);
    Map<String, String> printed = new LinkedHashMap<>();
    for (List<String> words :
        List.of(
            List.of("meters list"),
            List.of("meters doctor"),
            List.of("job add", "job.toml"),
            List.of("enter", "larkrise-01", "levels.csv"),
            List.of("replay", "larkrise-01", "--stage", "arrival", "arrival.capture.jsonl"),
            List.of("measure", "larkrise-01", "--stage", "arrival"),
            List.of("watch", "larkrise-01", "column.A3/across"),
            List.of(
                "collect",
                "larkrise-01",
                "--stage",
                "arrival",
                "--for",
                "0",
                "--link",
                "serial:/dev/ttyNoSuch7"),
            List.of("moved", "larkrise-01", "seat.A2", "--why", "packed"),
            List.of("job list"),
            List.of("job show", "larkrise-01", "--readings"),
            List.of("set-out", "larkrise-01"),
            List.of(
                "meters check",
                "laser",
                "known=12 m",
                "reading=12 m",
                "--job",
                "larkrise-01",
                "--method",
                "known-distance"),
            List.of("reduce", "larkrise-01"),
            List.of("report", "larkrise-01", "-o", "job.html"),
            List.of("trend", "--check", "slab-size"),
            List.of("compare", "--by", "crew", "--check", "slab-size"),
            List.of("limits list"),
            List.of("limits show", "en1090-column-spacing-1", "--size", "6 m"),
            List.of("verify"))) {
      printed.put(words.get(0), form(console, words));
    }
    String reading =
        JsonReader.readObject(json(console, "job show", "larkrise-01", "--readings"), "")
            .array("readings")
            .stream()
            .map(entry -> ((JsonObject) entry).text("reading"))
            .findFirst()
            .orElseThrow();
    printed.put("void", form(console, List.of("void", "larkrise-01", reading, "--why", "wrong")));
    signOff(console, printed);
    return printed;
  }

  /** Accepts what is open at the arrival until it can be signed. */
  private static void signOff(TestConsole console, Map<String, String> printed) {
    JsonObject answer = accept(console, "slab-square A1");
    printed.put("accept", form(answer));
    while (answer.text("state").equals("open")) {
      String open =
          answer.array("items").stream()
              .map(JsonObject.class::cast)
              .filter(item -> !item.truth("closed"))
              .map(item -> item.text("item"))
              .findFirst()
              .orElseThrow();
      answer = accept(console, open);
    }
    printed.put("sign", form(console, List.of("sign", "larkrise-01", "arrival", "--by", "Reed")));
  }

  private static JsonObject accept(TestConsole console, String item) {
    String[] words = {
      "accept",
      "larkrise-01",
      item,
      "--stage",
      "arrival",
      "--by",
      "Reed",
      "--reference",
      "letter",
      "--why",
      "trimmed"
    };
    return JsonReader.readObject(json(console, words), item);
  }

  private static String form(TestConsole console, List<String> words) {
    return form(JsonReader.readObject(json(console, words.toArray(String[]::new)), words.get(0)));
  }

  /** What a command line prints with --json; its first word may be two. */
  private static String json(TestConsole console, String... words) {
    List<String> line = new ArrayList<>(List.of(words[0].split(" ", -1)));
    Stream.of(words).skip(1).forEach(line::add);
    line.add("--json");
    assertEquals(
        0, console.runWithInput("quit\n", line.toArray(String[]::new)), line + console.err());
    return console.out();
  }

  /** Names of an object's members with the forms of those that have one; an array's first item. */
  private static String form(JsonValue value) {
    if (value instanceof JsonObject object) {
      return object.members().entrySet().stream()
          .map(member -> member.getKey() + after(": ", form(member.getValue())))
          .collect(Collectors.joining(", ", "{", "}"));
    }
    if (value instanceof JsonArray array) {
      return "["
          + array.items().stream().findFirst().map(CommandReferenceTest::form).orElse("")
          + "]";
    }
    return "";
  }

  private static String after(String mark, String form) {
    return form.isEmpty() ? "" : mark + form;
  }
}
