package datumpeg.bridge.cli;

import datumpeg.analysis.reduce.Findings;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Takes the commands of a sample's steps through the program itself, into a scratch record. */
final class DemoRun {
  private final Console console;
  private final Path record;

  DemoRun(Console console, Path record) {
    this.console = console;
    this.record = record;
  }

  /**
   * A sample job with what was found.
   *
   * @param stored the job and its readings, as the record has them
   */
  record Found(StoredJob stored, Findings findings) {}

  /**
   * Runs all steps, then reduces the job.
   *
   * @throws InputException if a step refuses its input
   * @throws OuterWorldException if the record or a file fails
   */
  Found of(DemoSample sample) {
    sample.steps().forEach(words -> run(sample, words));
    try (SiteRecord scratch = SqliteRecords.open(record, SqliteRecords.Mode.READ)) {
      StoredJob stored = StoredJob.load(scratch, sample.job());
      return new Found(stored, stored.findings());
    }
  }

  private void run(DemoSample sample, List<String> words) {
    ByteArrayOutputStream messages = new ByteArrayOutputStream();
    DatumpegCommand program = new DatumpegCommand(inFolder(sample.folder(), messages));
    CommandRunner runner = new CommandRunner(program, BridgeCommands.of(program));
    int status = runner.run(words.toArray(String[]::new));
    if (status == 0) {
      return;
    }
    String sentence =
        "The demo stopped at '"
            + String.join(" ", words)
            + "' in "
            + sample.folder()
            + ": "
            + messages.toString(StandardCharsets.UTF_8).strip();
    throw switch (status) {
      case CommandRunner.WRONG_USAGE -> new InputException(sentence);
      case CommandRunner.OUTER_WORLD -> new OuterWorldException(sentence);
      default -> new IllegalStateException(sentence);
    };
  }

  /** A console in the sample's folder whose answers nobody reads. */
  private Console inFolder(Path folder, ByteArrayOutputStream messages) {
    Map<String, String> environment = new HashMap<>(console.environment());
    environment.put("DATUMPEG_RECORD", record.toString());
    return new Console(
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
        new PrintStream(messages, true, StandardCharsets.UTF_8),
        InputStream.nullInputStream(),
        environment,
        console.clock(),
        folder);
  }
}
