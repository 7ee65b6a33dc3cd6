package datumpeg.desktop.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.cli.CommandRunner;
import datumpeg.bridge.cli.Console;
import datumpeg.bridge.cli.DatumpegCommand;
import datumpeg.desktop.source.JobSource;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DesktopCommandTest {
  @TempDir Path folder;
  private final ByteArrayOutputStream errors = new ByteArrayOutputStream();

  private int run(String... arguments) {
    DatumpegCommand program =
        new DatumpegCommand(
            new Console(
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                new PrintStream(errors, true, StandardCharsets.UTF_8),
                new ByteArrayInputStream(new byte[0]),
                Map.of("HOME", folder.toString()),
                Clock.systemUTC(),
                folder));
    return new CommandRunner(program, List.of(new DesktopCommand(program, this::noRecord)))
        .run(arguments);
  }

  private JobSource.Opening noRecord(Path file) {
    throw new AssertionError("nothing may be opened before the window can be: " + file);
  }

  private String said() {
    return errors.toString(StandardCharsets.UTF_8).strip();
  }

  /** The tests' own toolkit needs no display, so the choice of it is taken back for a moment. */
  @Test
  void withoutADisplayItSaysWhatIsMissingAndEndsWithThree() {
    String toolkit = System.getProperty("glass.platform", "");
    System.clearProperty("glass.platform");
    try {
      int status = run("desktop");
      boolean bringsItsOwn = System.getProperty("os.name", "").matches("(?i)(windows|mac).*");
      if (!bringsItsOwn) {
        assertEquals(3, status);
        assertTrue(said().contains("apt-get install") || said().contains("$DISPLAY"), said());
        assertEquals(1, said().lines().count(), said());
      }
    } finally {
      System.setProperty("glass.platform", toolkit);
    }
  }

  @Test
  void windowWritesNoJson() {
    assertEquals(2, run("desktop", "--json"));
    assertTrue(said().startsWith("The window writes no JSON"), said());
  }

  @Test
  void moreThanOneJobIsNotUnderstood() {
    assertEquals(2, run("desktop", "one", "two"));
    assertTrue(said().contains("two"), said());
  }
}
