package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.cli.BridgeCommands;
import datumpeg.bridge.cli.Console;
import datumpeg.bridge.cli.DatumpegCommand;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import javafx.application.Application;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

class MainTest {
  private final DatumpegCommand program =
      new DatumpegCommand(
          new Console(
              new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
              new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
              new ByteArrayInputStream(new byte[0]),
              Map.of(),
              Clock.systemUTC(),
              Path.of("")));

  @Test
  void mainClassIsNoApplication() {
    assertFalse(Application.class.isAssignableFrom(Main.class));
  }

  @Test
  void programHasAllCommandsOfTheBridge() {
    List<String> words = names(Main.commands(program));
    assertTrue(words.containsAll(names(BridgeCommands.of(program))), words.toString());
  }

  @Test
  void everyCommandDescribesItself() {
    for (Object command : Main.commands(program)) {
      check(CommandSpec.forAnnotatedObject(command));
    }
  }

  private static void check(CommandSpec spec) {
    String name = spec.qualifiedName();
    assertTrue(spec.usageMessage().description().length > 0, name + " has no description.");
    spec.args().stream()
        .filter(argument -> !argument.hidden())
        .forEach(
            argument ->
                assertTrue(
                    argument.description().length > 0,
                    name + ": " + argument.paramLabel() + " has no description."));
    for (CommandLine word : spec.subcommands().values()) {
      check(word.getCommandSpec());
    }
  }

  private static List<String> names(List<Object> commands) {
    List<String> names =
        commands.stream().map(command -> CommandSpec.forAnnotatedObject(command).name()).toList();
    assertEquals(names.stream().distinct().count(), names.size(), names + " repeat a word.");
    return names;
  }
}
