package datumpeg.bridge.cli;

import datumpeg.bridge.failure.FailureException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;

/**
 * Runs one command line and turns its end, good or bad, into an exit status. Messages go to
 * standard error as sentences; stack traces go to the log file.
 *
 * <p>One thread.
 */
public final class CommandRunner {
  /** A defect of ours; sysexits(3) of the BSDs calls it EX_SOFTWARE. */
  static final int DEFECT = 70;

  /** Ended by SIGINT: 128 + 2, as shells report it; also what the JVM itself returns. */
  static final int INTERRUPTED = 130;

  static final int WRONG_USAGE = 2;
  static final int OUTER_WORLD = 3;

  private final DatumpegCommand program;
  private final List<Object> commands;
  private final LogFile log;

  /**
   * A runner of the root command and the words under it.
   *
   * @param commands instances of classes with {@link Command}, in the order of the help
   */
  public CommandRunner(DatumpegCommand program, List<?> commands) {
    this.program = program;
    this.commands = List.copyOf(commands);
    this.log = new LogFile(program.folders().state().resolve("datumpeg.log"));
  }

  /**
   * The whole life of the process: runs the command line and exits.
   *
   * @param commands makes the commands once the console is there
   */
  public static void main(String[] arguments, Function<DatumpegCommand, List<Object>> commands) {
    main(new DatumpegCommand(Console.ofProcess()), arguments, commands);
  }

  /** The same of a program that a test put together. */
  static void main(
      DatumpegCommand program,
      String[] arguments,
      Function<DatumpegCommand, List<Object>> commands) {
    CommandRunner runner = new CommandRunner(program, commands.apply(program));
    LogSetting.install(runner.log);
    System.exit(runner.run(arguments));
  }

  /** Runs the command line and returns its exit status; never throws. */
  public int run(String... arguments) {
    int status;
    try {
      status = commandLine(arguments).execute(arguments);
    } catch (Throwable e) { // the top of every command: also a class that does not load ends here
      status = failed(e);
    }
    PrintStream out = program.console().out();
    if (status == 0 && out.checkError()) {
      program.console().err().println("Standard output could not be written to the end.");
      return OUTER_WORLD;
    }
    return status;
  }

  private CommandLine commandLine(String... arguments) {
    CommandLine line = new CommandLine(program);
    needed(arguments).forEach(line::addSubcommand);
    Console console = program.console();
    return line.registerConverter(Path.class, console.workingDirectory()::resolve)
        .setOut(new PrintWriter(console.out(), true, StandardCharsets.UTF_8))
        .setErr(new PrintWriter(console.err(), true, StandardCharsets.UTF_8))
        .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF))
        .setUsageHelpAutoWidth(false)
        .setParameterExceptionHandler((failure, given) -> misused(failure))
        .setExecutionExceptionHandler((failure, command, parsed) -> failed(failure));
  }

  /**
   * When the first word names a command, reading the annotations of the others would only cost
   * start-up time; otherwise all are needed, for the help or to find the nearest word.
   */
  private List<Object> needed(String... arguments) {
    List<Object> named =
        arguments.length == 0
            ? List.of()
            : commands.stream().filter(command -> name(command).equals(arguments[0])).toList();
    return named.isEmpty() ? commands : named;
  }

  private static String name(Object command) {
    Command annotation = command.getClass().getAnnotation(Command.class);
    if (annotation == null) {
      throw new IllegalArgumentException(command.getClass() + " carries no @Command.");
    }
    return annotation.name();
  }

  private int misused(ParameterException failure) {
    program.console().err().println(Misuse.sentence(failure));
    return WRONG_USAGE;
  }

  private int failed(Throwable failure) {
    PrintStream err = program.console().err();
    if (failure instanceof ParameterException misuse) {
      return misused(misuse);
    }
    if (failure instanceof InterruptedException) {
      err.println("Interrupted. Everything acknowledged is recorded.");
      return INTERRUPTED;
    }
    boolean logged = log.append(entry(failure));
    if (failure instanceof FailureException known) {
      err.println(known.getMessage());
      return known.exitStatus();
    }
    err.printf(
        "This is a defect of Datumpeg (%s). Everything acknowledged is recorded. %s%n",
        failure.getClass().getSimpleName(),
        logged
            ? "The details are in " + log.file() + "."
            : "The details could not be written to " + log.file() + ".");
    return DEFECT;
  }

  private LogRecord entry(Throwable failure) {
    LogRecord entry =
        new LogRecord(
            failure instanceof FailureException ? Level.WARNING : Level.SEVERE, "Command failed.");
    entry.setInstant(program.console().clock().instant());
    entry.setLoggerName(CommandRunner.class.getName());
    entry.setThrown(failure);
    return entry;
  }
}
