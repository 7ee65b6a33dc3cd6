package datumpeg.bridge.cli;

import datumpeg.bridge.exchange.TableIntake;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code enter}. */
@Command(
    name = "enter",
    description = "Take readings in from a CSV table: all its rows, or none if one is wrong.")
final class EnterCommand implements Callable<Integer> {
  private record Kind(String stage, String quantity) {}

  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Parameters(index = "1", paramLabel = "FILE.csv", description = "The table.")
  private String file = "";

  @Option(names = "--again", description = "Enter a table that was entered for the job before.")
  private boolean again;

  EnterCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    byte[] bytes = Records.bytes(program, file);
    TableIntake intake;
    try (SiteRecord record = Records.existing(program)) {
      intake =
          TableIntake.take(
              record,
              job,
              bytes,
              file,
              again ? TableIntake.Repeat.ENTER_AGAIN : TableIntake.Repeat.REFUSE,
              Records.start(program));
    }
    Map<Kind, Integer> counts = new LinkedHashMap<>();
    intake
        .readings()
        .forEach(
            reading ->
                counts.merge(new Kind(reading.stage(), reading.quantity()), 1, Integer::sum));
    if (program.json()) {
      Records.print(program, json(intake, counts));
    } else {
      print(intake, counts);
    }
    return 0;
  }

  private void print(TableIntake intake, Map<Kind, Integer> counts) {
    PrintStream out = program.console().out();
    out.printf(
        "Stored %d reading(s) of %s from %s:%n",
        intake.readings().size(), intake.job().key(), file);
    TextTable table = TextTable.ofWords();
    counts.forEach((kind, count) -> table.row(kind.stage, kind.quantity, count.toString()));
    table.print(out, "  ");
  }

  private JsonObject json(TableIntake intake, Map<Kind, Integer> counts) {
    return JsonObject.builder()
        .put("format", 1)
        .put("job", intake.job().key().job())
        .put("file", file)
        .put("sha256", intake.sha256())
        .put("readingCount", intake.readings().size())
        .put(
            "counts",
            JsonArray.of(
                counts.entrySet().stream()
                    .map(
                        entry ->
                            JsonObject.builder()
                                .put("stage", entry.getKey().stage)
                                .put("quantity", entry.getKey().quantity)
                                .put("count", entry.getValue())
                                .build())))
        .put(
            "readings",
            JsonArray.ofTexts(intake.readings().stream().map(r -> r.id().toString()).toList()))
        .build();
  }
}
