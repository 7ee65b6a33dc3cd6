package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.ReadingValue;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.Finding;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.Verification;
import datumpeg.bridge.record.entry.Head;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code verify}. */
@Command(
    name = "verify",
    description = "Read the whole record and say which rows are altered, missing or out of order.")
final class VerifyCommand implements Callable<Integer> {
  private static final int DAMAGED = 4;

  private final DatumpegCommand program;

  @Option(
      names = "--head",
      paramLabel = "ORIGIN:SEQUENCE:DIGEST",
      description = "The end of a chain as it was kept elsewhere, such as in a report.")
  private List<String> heads = new ArrayList<>();

  VerifyCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    List<Head> kept = heads.stream().map(VerifyCommand::head).toList();
    Verification verification;
    try (SiteRecord record = Records.forReading(program)) {
      verification = record.verify(ReadingValue.derived(), kept);
    }
    if (program.json()) {
      Records.print(program, json(verification));
    } else {
      print(verification);
    }
    return verification.isSound() ? 0 : DAMAGED;
  }

  private static Head head(String text) {
    try {
      return Head.parse(text);
    } catch (IllegalArgumentException e) {
      throw new InputException("--head: " + e.getMessage() + ".", e);
    }
  }

  private void print(Verification verification) {
    PrintStream out = program.console().out();
    if (verification.isSound()) {
      out.printf(
          "Sound: %d row(s) in %d chain(s) are as they were stored.%n",
          verification.rowCount(), verification.chainCount());
    } else {
      out.printf(
          "Damaged: %d finding(s) in %d row(s) of %d chain(s).%n",
          verification.findingCount(), verification.rowCount(), verification.chainCount());
      verification.findings().forEach(finding -> out.println("  " + finding.sentence()));
    }
    out.println(Verification.CANNOT_KNOW);
    out.println("Heads to keep elsewhere:");
    verification.heads().forEach(head -> out.println("  " + head.print()));
  }

  private JsonObject json(Verification verification) {
    return JsonObject.builder()
        .put("format", 1)
        .put("record", program.recordFile().toString())
        .put("sound", verification.isSound())
        .put("rowCount", verification.rowCount())
        .put("chainCount", verification.chainCount())
        .put("findingCount", verification.findingCount())
        .put("findings", JsonArray.of(verification.findings().stream().map(VerifyCommand::json)))
        .put("cannotKnow", Verification.CANNOT_KNOW)
        .put("heads", JsonArray.ofTexts(verification.heads().stream().map(Head::print).toList()))
        .build();
  }

  private static JsonObject json(Finding finding) {
    return JsonObject.builder()
        .put("trouble", finding.trouble().name().toLowerCase(Locale.ROOT).replace('_', '-'))
        .put("origin", finding.origin())
        .put("firstSequence", finding.firstSequence())
        .put("lastSequence", finding.lastSequence())
        .put("sentence", finding.sentence())
        .build();
  }
}
