package datumpeg.bridge.cli;

import datumpeg.bridge.link.ble.Patience;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;

/**
 * Runs command lines in-process, in a folder of the test's own, on a clock that stands still, and
 * keeps what was printed.
 */
public final class TestConsole {
  /** The moment at which the clock stands. */
  public static final Instant NOW = Instant.parse("2026-03-02T08:15:30Z");

  /** What waits is tried again sooner than usual. */
  private static final Spans SPANS = new Spans(Duration.ofMillis(300), Spans.USUAL.apart());

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final Path folder;
  private final Map<String, String> environment;
  private final Function<DatumpegCommand, List<Object>> commands;
  private final Patience patience;

  /** A console in {@code folder} that knows all commands of the bridge. */
  public TestConsole(Path folder) {
    this(folder, BridgeCommands::of);
  }

  TestConsole(Path folder, Function<DatumpegCommand, List<Object>> commands) {
    this(folder, commands, Map.of(), Patience.USUAL);
  }

  /** With more variables in its environment, and a patience of its own with Bluetooth LE meters. */
  TestConsole(Path folder, Map<String, String> environment, Patience patience) {
    this(folder, BridgeCommands::of, environment, patience);
  }

  private TestConsole(
      Path folder,
      Function<DatumpegCommand, List<Object>> commands,
      Map<String, String> environment,
      Patience patience) {
    this.folder = folder;
    this.patience = patience;
    this.environment = new HashMap<>(environment);
    this.environment.put("HOME", folder.toString());
    this.environment.put("DATUMPEG_RECORD", "record.db");
    this.environment.put("XDG_STATE_HOME", folder.resolve("state").toString());
    this.commands = commands;
  }

  /** Runs one command line with nothing on standard input; returns the exit status. */
  public int run(String... arguments) {
    return runWithInput("", arguments);
  }

  /** Runs one command line; returns the exit status. What earlier runs printed is forgotten. */
  public int runWithInput(String input, String... arguments) {
    return runWithInput(
        new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)), arguments);
  }

  /** As the other, with input that comes bit by bit. */
  int runWithInput(InputStream input, String... arguments) {
    forget();
    DatumpegCommand program = new DatumpegCommand(console(input), patience, SPANS);
    return new CommandRunner(program, commands.apply(program)).run(arguments);
  }

  /** Begins a command line with nothing on standard input; see the other. */
  CompletableFuture<Integer> begin(String... arguments) {
    return begin(InputStream.nullInputStream(), arguments);
  }

  /**
   * Runs a command line on a thread of its own. What earlier runs printed is forgotten before this
   * returns: nobody takes it for what this one says.
   */
  CompletableFuture<Integer> begin(InputStream input, String... arguments) {
    forget();
    return CompletableFuture.supplyAsync(
        () -> runWithInput(input, arguments), TestConsole::onItsOwnThread);
  }

  /** The common pool has as few threads as the machine has processors, and one may be kept. */
  private static void onItsOwnThread(Runnable run) {
    Thread thread = new Thread(run, "command line");
    thread.setDaemon(true);
    thread.start();
  }

  private void forget() {
    out.reset();
    err.reset();
  }

  /** What the last run wrote on standard output. */
  public String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  /** What the last run wrote on standard error. */
  public String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  /** The record used when the command line names none. */
  public Path recordFile() {
    return folder.resolve("record.db");
  }

  private Console console(InputStream input) {
    return new Console(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        input,
        environment,
        Clock.fixed(NOW, ZoneOffset.UTC),
        folder);
  }
}
