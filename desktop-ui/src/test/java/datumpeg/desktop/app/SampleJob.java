package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.bridge.cli.BridgeCommands;
import datumpeg.bridge.cli.CommandRunner;
import datumpeg.bridge.cli.Console;
import datumpeg.bridge.cli.DatumpegCommand;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A sample job of the project, written into a record by the program's own commands, each of which
 * opens the record for itself as another process would.
 *
 * @param folder under sample-readings
 * @param record the file that is written
 */
public record SampleJob(Path folder, Path record) {
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  public static SampleJob of(String id, Path record) {
    return new SampleJob(
        Path.of(System.getProperty("datumpeg.root"), "sample-readings", id), record);
  }

  /** The lines of the sample's steps.txt, without comments. */
  public List<String> steps() {
    try {
      return Files.readAllLines(folder.resolve("steps.txt")).stream()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public void run(String step) {
    List<String> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(step);
    while (matcher.find()) {
      words.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
    }
    words.add("--record");
    words.add(record.toString());
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    DatumpegCommand program = program(new PrintStream(said, true, StandardCharsets.UTF_8));
    int status =
        new CommandRunner(program, BridgeCommands.of(program)).run(words.toArray(String[]::new));
    assertEquals(0, status, () -> step + ": " + said.toString(StandardCharsets.UTF_8));
  }

  /** At home in the folder of the record. */
  private DatumpegCommand program(PrintStream out) {
    return new DatumpegCommand(
        new Console(
            out,
            out,
            new ByteArrayInputStream(new byte[0]),
            Map.of("HOME", String.valueOf(record.toAbsolutePath().getParent())),
            Clock.systemUTC(),
            folder));
  }

  /** Where a window that is at home there keeps how it was set. */
  Path settingsFile() {
    return program(System.out).settingsFile();
  }

  public void runAll() {
    steps().forEach(this::run);
  }
}
