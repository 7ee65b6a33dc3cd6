package datumpeg.bridge.cli;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.signoff.Cautions;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.signoff.SignOffItem;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import java.io.PrintStream;
import java.util.Locale;

/** Prints the check list of a stage and how its hold point stands. */
final class HoldPointPrinter {
  private final DatumpegCommand program;

  HoldPointPrinter(DatumpegCommand program) {
    this.program = program;
  }

  void print(Job job, HoldPoint point) {
    if (program.json()) {
      Records.print(program, json(job, point));
      return;
    }
    PrintStream out = program.console().out();
    out.printf("%s, stage %s: %s%n", job.identity().id(), point.stage().id(), sentence(point));
    for (SignOffItem item : point.items()) {
      out.printf(
          "  %s  %s: %s (%s)%n",
          item.isClosed() ? "closed" : "OPEN  ", item.key(), item.found(), word(item.how()));
      item.acceptance()
          .ifPresent(
              one ->
                  out.printf(
                      "          accepted as it is by %s, reference %s: %s%n",
                      one.by(), one.reference(), one.why()));
    }
    Cautions.of(job, point.stage().id()).forEach(caution -> out.printf("  ! %s%n", caution));
    out.printf("  %s%n", Cautions.WHO_DECIDES);
  }

  private static String sentence(HoldPoint point) {
    return switch (point.state()) {
      case NONE -> "has no hold point.";
      case NOT_BEGUN -> "the hold point is open; nothing was measured yet.";
      case OPEN -> "the hold point is open; do not work past it.";
      case TO_SIGN -> "every item is closed; the hold point is open until it is signed.";
      case SIGNED ->
          "the hold point is closed, signed by "
              + point.signature().map(one -> one.by()).orElse("")
              + ".";
    };
  }

  private static JsonObject json(Job job, HoldPoint point) {
    return JsonObject.builder()
        .put("format", 1)
        .put("job", job.identity().id())
        .put("stage", point.stage().id())
        .put("state", word(point.state()))
        .put("signedBy", point.signature().map(one -> one.by()).orElse(""))
        .put("items", JsonArray.of(point.items().stream().map(HoldPointPrinter::json)))
        .build();
  }

  private static JsonObject json(SignOffItem item) {
    return JsonObject.builder()
        .put("item", item.key())
        .put("found", item.found())
        .put("closed", item.isClosed())
        .put("how", word(item.how()))
        .put("acceptedBy", item.acceptance().map(one -> one.by()).orElse(""))
        .put("reference", item.acceptance().map(one -> one.reference()).orElse(""))
        .put("why", item.acceptance().map(one -> one.why()).orElse(""))
        .build();
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
