package datumpeg.desktop.app;

import datumpeg.bridge.cli.DatumpegCommand;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.source.JobSource;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Opens the window and waits until it is closed. */
@Command(
    name = "desktop",
    description =
        "Open the window: the jobs of the record, what was found in each, and how a check goes"
            + " from stage to stage. It follows the record while others write to it.")
public final class DesktopCommand implements Callable<Integer> {
  private final DatumpegCommand program;
  private final Function<Path, JobSource.Opening> records;

  @Parameters(
      arity = "0..1",
      paramLabel = "JOB",
      description = "The job to show first (otherwise what was shown last).")
  private @Nullable String job;

  /**
   * The command.
   *
   * @param records how a record is opened
   */
  DesktopCommand(DatumpegCommand program, Function<Path, JobSource.Opening> records) {
    this.program = program;
    this.records = records;
  }

  @Override
  public Integer call() throws InterruptedException {
    if (program.json()) {
      throw new InputException(
          "The window writes no JSON; leave --json out, or use reduce --json.");
    }
    Optional<String> missing =
        DisplayCheck.ofThisMachine(program.console().environment()).whatIsMissing();
    if (missing.isPresent()) {
      throw new OuterWorldException(missing.get());
    }
    Path file = program.recordFile();
    WindowRun.untilClosed(
        () ->
            new LiveWindow(
                file.toString(),
                records.apply(file),
                job == null ? "" : job,
                new SettingsFile(program.settingsFile()),
                program.console().clock(),
                ZoneId.systemDefault()));
    return 0;
  }
}
