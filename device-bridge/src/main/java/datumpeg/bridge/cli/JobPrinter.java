package datumpeg.bridge.cli;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.io.PrintStream;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** Prints a stored job for people. */
final class JobPrinter {
  private final PrintStream out;
  private final StoredJob stored;
  private final JobLog log;

  JobPrinter(PrintStream out, StoredJob stored, JobLog log) {
    this.out = out;
    this.stored = stored;
    this.log = log;
  }

  void print(boolean withReadings) {
    identity();
    building();
    limits();
    meters();
    stages();
    if (!stored.moved().isEmpty()) {
      out.println("Moved");
      stored.moved().forEach(thing -> out.println("  " + thing.text()));
    }
    JobCommand.printStrays(out, stored.strays());
    if (withReadings) {
      readings();
    }
  }

  private void identity() {
    JobIdentity identity = stored.job().identity();
    out.printf("%s · %s · revision %d%n", stored.key(), identity.name(), stored.revision());
    out.printf(
        "  site %s, crew %s%s%s%n",
        identity.site(),
        identity.crew(),
        identity.slabBy().isEmpty() ? "" : ", slab by " + identity.slabBy(),
        identity.started().map(day -> ", started " + day).orElse(""));
  }

  private void building() {
    Building building = stored.job().setOut().building();
    out.printf(
        "  span %s, length %s, eave height %s, %d frames, bays %s%n",
        length(building.spanMetres()),
        length(building.lengthMetres()),
        length(building.eaveHeightMetres()),
        building.portalFrameCount(),
        building.baysMetres().stream().map(JobPrinter::length).collect(Collectors.joining(" + ")));
  }

  private static String length(double metres) {
    return LengthDisplay.METRIC.dimension(metres);
  }

  private void limits() {
    out.println("Limits");
    TextTable table = TextTable.ofWords();
    stored
        .job()
        .tolerances()
        .forEach(
            (check, tolerance) ->
                table.row(check, RuleWords.of(tolerance.rule()), tolerance.source()));
    table.print(out, "  ");
    if (stored.job().tolerances().isEmpty()) {
      out.println("  none: values are told without a verdict");
    }
  }

  private void meters() {
    if (!stored.job().meters().isEmpty()) {
      out.println("Meters");
      TextTable table = TextTable.ofWords();
      stored.job().meters().values().forEach(m -> table.row(m.id(), m.quantity().text()));
      table.print(out, "  ");
    }
  }

  private void stages() {
    out.println("Stages");
    TextTable table = TextTable.ofWords().row("stage", "targets", "readings", "what");
    for (Stage stage : stored.job().stages()) {
      table.row(
          stage.id(),
          Integer.toString(MeasuringList.of(stored.job().setOut(), stage).items().size()),
          Long.toString(JobJson.readingCount(stored, stage)),
          stage.title() + (stage.holdPoint() ? " (hold point)" : ""));
    }
    table.print(out, "  ");
  }

  private void readings() {
    out.println("Readings");
    Set<UUID> voided = log.voidedIds();
    TextTable table = TextTable.ofWords().row("reading", "stage", "target", "value", "round", "");
    for (StoredEntry<ReadingEntry> reading : log.readings()) {
      ReadingEntry entry = reading.entry();
      table.row(
          entry.id().toString(),
          entry.stage(),
          entry.target() + (entry.face() == 0 ? "" : " face " + entry.face()),
          (entry.value() + " " + entry.unit()).strip(),
          Integer.toString(entry.round()),
          voided.contains(entry.id()) ? "withdrawn" : "");
    }
    table.print(out, "  ");
  }
}
