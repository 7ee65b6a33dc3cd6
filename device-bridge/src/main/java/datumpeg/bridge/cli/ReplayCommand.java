package datumpeg.bridge.cli;

import datumpeg.bridge.collect.CaptureIntake;
import datumpeg.bridge.collect.CaptureReplay;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
import java.io.PrintStream;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code replay}. */
@Command(
    name = "replay",
    description =
        "Take readings in from a capture: the bytes a meter sent, through the same path as live.")
final class ReplayCommand implements Callable<Integer> {
  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Parameters(index = "1", paramLabel = "CAPTURE", description = "The capture (JSON Lines).")
  private String file = "";

  @Option(
      names = "--stage",
      paramLabel = "STAGE",
      required = true,
      description = "The stage the readings are of.")
  private String stage = "";

  @Option(names = "--again", description = "Replay a capture that was replayed before.")
  private boolean again;

  ReplayCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    CaptureIntake intake;
    try (SiteRecord record = Records.forWriting(program)) {
      intake =
          CaptureIntake.take(
              record,
              job,
              stage,
              Records.file(program, file),
              again ? CaptureIntake.Repeat.REPLAY_AGAIN : CaptureIntake.Repeat.REFUSE,
              Records.profiles(program),
              Records.start(program));
    }
    if (program.json()) {
      Records.print(program, json(intake));
    } else {
      print(intake);
    }
    return 0;
  }

  private void print(CaptureIntake intake) {
    PrintStream out = program.console().out();
    CaptureReplay.Played played = intake.played();
    out.printf(
        "Stored %d reading(s) of %s, stage %s, from %s.%n",
        played.stored().size(), intake.job().key(), stage, file);
    if (played.putAside() + played.withdrawn() + played.otherFrames() > 0) {
      out.printf(
          "Put aside: %d; withdrawn again: %d; lines that were no readings: %d.%n",
          played.putAside(), played.withdrawn(), played.otherFrames());
    }
    if (played.tornLine().isPresent()) {
      out.printf(
          "Line %d, the last, is cut short and was left out.%n", played.tornLine().getAsLong());
    }
  }

  private JsonObject json(CaptureIntake intake) {
    CaptureReplay.Played played = intake.played();
    JsonObject.Builder answer =
        JsonObject.builder()
            .put("format", 1)
            .put("job", intake.job().key().job())
            .put("stage", stage)
            .put("capture", file)
            .put("readingCount", played.stored().size())
            .put("putAside", played.putAside())
            .put("withdrawn", played.withdrawn())
            .put("otherLines", played.otherFrames())
            .put(
                "readings",
                JsonArray.ofTexts(
                    played.stored().stream().map(row -> row.id().toString()).toList()));
    played.tornLine().ifPresent(line -> answer.put("tornLine", line));
    return answer.build();
  }
}
