package datumpeg.bridge.cli;

import datumpeg.bridge.collect.LiveLinks;
import datumpeg.bridge.collect.WaitingTerms;
import datumpeg.bridge.link.ble.Patience;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/**
 * The word {@code datumpeg} itself: the options that every command takes, and the console. Each
 * command holds the one instance and asks it while it runs; before that the options are not read.
 *
 * <p>One thread.
 */
@Command(
    name = "datumpeg",
    versionProvider = ProgramVersion.class,
    synopsisSubcommandLabel = "COMMAND",
    descriptionHeading = "%n",
    description =
        "The measuring record of a crew that puts up cold-formed portal-frame buildings on a"
            + " concrete slab: what was measured, whether it is within its limits, what to do.",
    optionListHeading = "%nOptions, before or after the command:%n",
    commandListHeading = "%nCommands (datumpeg COMMAND --help tells more):%n",
    exitCodeListHeading = "%nExit statuses:%n",
    exitCodeList = {
      "0:done",
      "1:done, and with --strict something is nonconforming",
      "2:wrong usage or bad input",
      "3:a port, a disk or a database failed",
      "4:the record does not add up",
      "70:a defect of this program",
      "130:interrupted; everything acknowledged is recorded"
    })
public final class DatumpegCommand implements Runnable {
  private final Console console;
  private final Patience patience;
  private final Spans spans;

  @Spec private CommandSpec spec;

  @Option(
      names = "--record",
      paramLabel = "FILE",
      scope = ScopeType.INHERIT,
      description =
          "The record to use (otherwise $DATUMPEG_RECORD, otherwise record.db in the user's data"
              + " folder).")
  private @Nullable Path record;

  @Option(
      names = "--json",
      scope = ScopeType.INHERIT,
      description = "Write one JSON document on standard output and nothing else.")
  private boolean json;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      scope = ScopeType.INHERIT,
      description = "Show this help.")
  @SuppressWarnings("unused") // picocli sets and reads it
  private boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  @SuppressWarnings("unused") // picocli sets and reads it
  private boolean version;

  public DatumpegCommand(Console console) {
    this(console, Patience.USUAL, Spans.USUAL);
  }

  /**
   * A program for tests.
   *
   * @param patience with Bluetooth LE meters
   */
  DatumpegCommand(Console console, Patience patience, Spans spans) {
    this.console = console;
    this.patience = patience;
    this.spans = spans;
  }

  /** What the command may print to and read from. */
  public Console console() {
    return console;
  }

  /** True when standard output must carry one JSON document and nothing else. */
  public boolean json() {
    return json;
  }

  /**
   * The record to use, as an absolute path: {@code --record}, else {@code $DATUMPEG_RECORD}, else
   * {@code record.db} in the platform's data folder. Neither it nor its folder need exist.
   */
  public Path recordFile() {
    if (record != null) {
      return record;
    }
    String named = console.environment().getOrDefault("DATUMPEG_RECORD", "");
    return named.isEmpty()
        ? folders().data().resolve("record.db")
        : console.workingDirectory().resolve(named);
  }

  /** Where the window keeps how its user set it. */
  public Path settingsFile() {
    return folders().data().resolve("desktop.properties");
  }

  /** How live links are opened here. */
  LiveLinks links() {
    return LiveLinks.of(console.environment(), patience);
  }

  /** What a session does while its record takes nothing. */
  WaitingTerms waitingTerms() {
    return new WaitingTerms(folders().spares(console.environment()), spans.pause());
  }

  /** By which a session goes. */
  Spans spans() {
    return spans;
  }

  PlatformFolders folders() {
    return PlatformFolders.of(System.getProperty("os.name", ""), console.environment());
  }

  /** Without a command there is nothing to do. */
  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "A command is missing after 'datumpeg'");
  }
}
