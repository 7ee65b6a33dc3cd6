package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.IntegrityException;
import datumpeg.bridge.failure.OuterWorldException;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

class CommandRunnerTest {
  @TempDir Path folder;

  @Test
  void exitStatusIsWhatTheCommandReturns() {
    assertEquals(1, ending(() -> 1).run("measured"));
    assertEquals(0, ending(() -> 0).run("measured"));
  }

  @Test
  void failuresOfThreeKindsBecomeTheirExitStatusAndTheirSentence() {
    TestConsole input = failing(new InputException("The bay is missing."));
    assertEquals(2, input.run("measured"));
    assertEquals("The bay is missing." + System.lineSeparator(), input.err());
    assertEquals("", input.out());
    assertEquals(3, failing(new OuterWorldException("The disk is full.")).run("measured"));
    assertEquals(4, failing(new IntegrityException("Row 7 was altered.")).run("measured"));
  }

  @Test
  void interruptedCommandEndsWith130() {
    assertEquals(130, failing(new InterruptedException()).run("measured"));
  }

  @Test
  void defectIsOneSentenceOnStandardErrorAndATraceInTheLogFile() throws IOException {
    TestConsole console = failing(new IllegalStateException("seven"));
    assertEquals(70, console.run("measured"));
    Path log = folder.resolve("state/datumpeg/datumpeg.log");
    assertTrue(console.err().contains(log.toString()), console.err());
    assertEquals(1, console.err().lines().count());
    assertFalse(console.err().contains("\tat "));
    String written = Files.readString(log);
    assertTrue(written.contains("IllegalStateException: seven"), written);
    assertTrue(written.contains("\tat datumpeg"), written);
  }

  @Test
  void errorThatIsNoExceptionIsADefectToo() {
    TestConsole console = new TestConsole(folder, program -> List.of(new Unlinked()));
    assertEquals(70, console.run("unlinked"));
    assertTrue(console.err().contains("NoClassDefFoundError"), console.err());
  }

  @Test
  void defectIsToldEvenWhenTheLogCannotBeWritten() throws IOException {
    Files.writeString(folder.resolve("state"), "a file where the folder should be");
    TestConsole console = failing(new IllegalStateException("seven"));
    assertEquals(70, console.run("measured"));
    assertTrue(console.err().contains("could not be written"), console.err());
  }

  @Test
  void runWithoutTroubleWritesNoLog() {
    ending(() -> 0).run("measured");
    assertFalse(Files.exists(folder.resolve("state")));
  }

  @Test
  void unknownOptionIsWrongUsageAndTheNearestIsNamed() {
    TestConsole console = ending(() -> 0);
    assertEquals(2, console.run("measured", "--recrod", "a.db"));
    assertEquals(
        "The option '--recrod' is not known; the nearest is '--record'."
            + " See 'datumpeg measured --help'."
            + System.lineSeparator(),
        console.err());
  }

  @Test
  void unknownCommandIsWrongUsageAndTheNearestIsNamed() {
    TestConsole console = ending(() -> 0);
    assertEquals(2, console.run("measurd"));
    assertTrue(console.err().contains("the nearest is 'measured'"), console.err());
  }

  @Test
  void missingCommandIsWrongUsage() {
    TestConsole console = ending(() -> 0);
    assertEquals(2, console.run());
    assertTrue(console.err().startsWith("A command is missing"), console.err());
  }

  @Test
  void optionsOfAllCommandsStandBeforeOrAfterTheCommand() {
    for (List<String> line :
        List.of(
            List.of("--record", "b.db", "--json", "measured"),
            List.of("measured", "--json", "--record=b.db"))) {
      TestConsole console = ending(() -> 0);
      assertEquals(0, console.run(line.toArray(String[]::new)));
      assertEquals(folder.resolve("b.db") + " true", console.out().strip());
    }
  }

  @Test
  void recordComesFromTheEnvironmentWhenNotNamed() {
    TestConsole console = ending(() -> 0);
    console.run("measured");
    assertEquals(folder.resolve("record.db") + " false", console.out().strip());
  }

  @Test
  void pathsStandAgainstTheWorkingDirectoryAndMayHoldSpaces() {
    TestConsole console = new TestConsole(folder, program -> List.of(new Shown(program)));
    assertEquals(0, console.run("shown", "hay shed.toml"));
    assertEquals(folder.resolve("hay shed.toml").toString(), console.out().strip());
  }

  @Test
  void helpListsCommandsOptionsAndExitStatuses() {
    TestConsole console = ending(() -> 0);
    assertEquals(0, console.run("--help"));
    for (String word : List.of("measured", "--record", "--json", "130")) {
      assertTrue(console.out().contains(word), word + " in " + console.out());
    }
    assertEquals(0, console.run("measured", "--help"));
    assertTrue(console.out().contains("--record"), console.out());
  }

  @Test
  void versionIsTheOneOfTheBuild() {
    TestConsole console = ending(() -> 0);
    assertEquals(0, console.run("--version"));
    assertTrue(console.out().matches("(?s)datumpeg \\d+\\.\\d+\\.\\d+\\RJava .*"), console.out());
  }

  @Test
  void outputThatCannotBeWrittenIsAFailureOfTheOuterWorld() {
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException("No space left on device");
          }
        };
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(full, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            new ByteArrayInputStream(new byte[0]),
            Map.of("HOME", folder.toString()),
            Clock.systemUTC(),
            folder);
    DatumpegCommand program = new DatumpegCommand(console);
    assertEquals(3, new CommandRunner(program, List.of(new Shown(program))).run("shown", "a"));
  }

  private TestConsole failing(Exception failure) {
    return ending(
        () -> {
          throw failure;
        });
  }

  private TestConsole ending(Callable<Integer> ending) {
    return new TestConsole(folder, program -> List.of(new Measured(program, ending)));
  }

  @Command(name = "measured", description = "Ends as the test wishes.")
  static final class Measured implements Callable<Integer> {
    private final DatumpegCommand program;
    private final Callable<Integer> ending;

    Measured(DatumpegCommand program, Callable<Integer> ending) {
      this.program = program;
      this.ending = ending;
    }

    @Override
    public Integer call() throws Exception {
      int status = ending.call();
      program.console().out().println(program.recordFile() + " " + program.json());
      return status;
    }
  }

  @Command(name = "unlinked")
  static final class Unlinked implements Callable<Integer> {
    @Option(names = "--again")
    boolean again;

    @Override
    public Integer call() {
      throw new NoClassDefFoundError(again ? "again" : "once");
    }
  }

  @Command(name = "shown")
  static final class Shown implements Callable<Integer> {
    private final DatumpegCommand program;

    @Parameters Path file;

    Shown(DatumpegCommand program) {
      this.program = program;
    }

    @Override
    public Integer call() {
      program.console().out().println(file);
      return 0;
    }
  }
}
