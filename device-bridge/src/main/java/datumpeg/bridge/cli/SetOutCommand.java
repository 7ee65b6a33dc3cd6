package datumpeg.bridge.cli;

import datumpeg.analysis.building.SetOutSheet;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.jobfile.JobFile;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code set-out}. */
@Command(
    name = "set-out",
    description = "Print the dimensions that follow from the plan, to carry to the slab.")
final class SetOutCommand implements Callable<Integer> {
  private static final int LINE_LENGTH = 80;

  private final DatumpegCommand program;

  @Parameters(
      paramLabel = "JOB",
      description = "A job's id, or a job file (a name that ends in .toml).")
  private String job = "";

  @Option(names = "--imperial", description = "In feet, inches and sixteenths.")
  private boolean imperial;

  SetOutCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    LengthDisplay display = imperial ? LengthDisplay.IMPERIAL : LengthDisplay.METRIC;
    Job plan;
    String from;
    if (job.toLowerCase(Locale.ROOT).endsWith(".toml")) {
      plan = JobFile.load(Records.file(program, job), job).job();
      from = job;
    } else {
      try (SiteRecord record = Records.forReading(program)) {
        StoredJob stored = StoredJob.load(record, job);
        plan = stored.job();
        from = "revision " + stored.revision();
      }
    }
    SetOutSheet sheet = SetOutSheet.of(plan.setOut(), display);
    if (program.json()) {
      Records.print(program, json(plan, sheet));
    } else {
      print(plan, from, sheet, display);
    }
    return 0;
  }

  private void print(Job plan, String from, SetOutSheet sheet, LengthDisplay display) {
    PrintStream out = program.console().out();
    out.printf(
        "Set-out of %s · %s · from %s%n", plan.identity().id(), plan.identity().name(), from);
    out.println("Stand outside end 1 facing end n: A on the right hand, B on the left.");
    out.println("The origin is slab corner A1. Where this sheet differs from the engineer's");
    out.println("drawings, the drawings decide.");
    for (SetOutSheet.Table table : sheet.tables()) {
      out.println();
      out.println(table.title());
      TextTable text = TextTable.ofNumbers();
      if (table.columns().size() > 1) {
        List<String> header = new ArrayList<>(List.of(""));
        header.addAll(table.columns());
        text.row(header);
      }
      table.rows().forEach(row -> text.row(cells(row, display)));
      text.print(out, "  ");
      table.remarks().forEach(remark -> out.println(wrapped(remark)));
    }
  }

  /** Lines of at most {@value #LINE_LENGTH} characters, indented, for a printed sheet. */
  private static String wrapped(String sentence) {
    StringBuilder text = new StringBuilder();
    int length = LINE_LENGTH;
    for (String word : sentence.split(" ")) {
      if (length + 1 + word.length() > LINE_LENGTH) {
        text.append(text.length() == 0 ? "  " : System.lineSeparator() + "  ").append(word);
        length = 2 + word.length();
      } else {
        text.append(' ').append(word);
        length += 1 + word.length();
      }
    }
    return text.toString();
  }

  private static List<String> cells(SetOutSheet.Row row, LengthDisplay display) {
    List<String> cells = new ArrayList<>(List.of(row.name()));
    row.metres().forEach(metres -> cells.add(display.dimension(metres)));
    return cells;
  }

  private static JsonObject json(Job plan, SetOutSheet sheet) {
    return JsonObject.builder()
        .put("format", 1)
        .put("job", plan.identity().id())
        .put("unit", "mm")
        .put("tables", JsonArray.of(sheet.tables().stream().map(SetOutCommand::json)))
        .build();
  }

  private static JsonObject json(SetOutSheet.Table table) {
    return JsonObject.builder()
        .put("table", table.key())
        .put("title", table.title())
        .put("rows", JsonArray.of(table.rows().stream().map(row -> json(table, row))))
        .put("remarks", JsonArray.ofTexts(table.remarks()))
        .build();
  }

  private static JsonObject json(SetOutSheet.Table table, SetOutSheet.Row row) {
    JsonObject.Builder json = JsonObject.builder().put("name", row.name());
    for (int i = 0; i < table.columns().size(); i++) {
      json.put(table.columns().get(i).replace(' ', '-'), JobJson.millimetres(row.metres().get(i)));
    }
    return json.build();
  }
}
