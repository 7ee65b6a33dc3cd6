package datumpeg.bridge.cli;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.report.AttachedPhoto;
import datumpeg.analysis.report.Report;
import datumpeg.analysis.report.ReportOptions;
import datumpeg.bridge.collect.CaptureIntake;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.Photos;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.Head;
import datumpeg.bridge.record.entry.PhotoEntry;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code report}. */
@Command(
    name = "report",
    description =
        "Write the job's page, or one stage's: the answer first, drawings, every outcome.")
final class ReportCommand implements Callable<Integer> {
  private static final DateTimeFormatter PRINTED =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final DatumpegCommand program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job's id.")
  private String job = "";

  @Option(
      names = "--stage",
      paramLabel = "STAGE",
      description = "Only this stage; arrival alone is the page for whoever laid the slab.")
  private @Nullable String stage;

  @Option(names = "--imperial", description = "Lengths in feet, inches and sixteenths.")
  private boolean imperial;

  @Option(
      names = "-o",
      paramLabel = "FILE.html",
      required = true,
      description = "Where to write the page.")
  private String output = "";

  ReportCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Override
  public Integer call() {
    Path file = target();
    StoredJob stored;
    List<String> heads;
    List<PhotoEntry> photos;
    try (SiteRecord record = Records.forReading(program)) {
      stored = StoredJob.load(record, job);
      heads = record.heads().stream().map(Head::print).toList();
      photos = record.log(stored.key()).photos().stream().map(StoredEntry::entry).toList();
    }
    String wanted = stage;
    if (wanted != null) {
      CaptureIntake.stage(stored, wanted);
    }
    Findings findings = stored.findings();
    String page =
        new Report(
                stored.jobAsMeasured(),
                findings,
                stored.readings(),
                stored.holdPoints(findings),
                shown(photos, wanted))
            .html(
                new ReportOptions(
                    Optional.ofNullable(wanted),
                    imperial ? LengthDisplay.IMPERIAL : LengthDisplay.METRIC,
                    heads,
                    ProgramVersion.number(),
                    PRINTED.format(Instant.now(program.console().clock()))));
    write(file, page);
    tell(stored, file);
    return 0;
  }

  private List<AttachedPhoto> shown(List<PhotoEntry> photos, @Nullable String onlyStage) {
    Photos kept = new Photos(program.recordFile());
    return photos.stream()
        .filter(photo -> onlyStage == null || photo.stage().equals(onlyStage))
        .map(kept::forReport)
        .toList();
  }

  private Path target() {
    Path file = Records.file(program, output);
    if (!output.toLowerCase(Locale.ROOT).endsWith(".html")) {
      throw new InputException(
          "The report cannot be written to " + output + "; expected a name ending in .html.");
    }
    @Nullable Path folder = file.getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      throw new InputException(
          "The report cannot be written to " + output + ": there is no folder " + folder + ".");
    }
    if (Files.isDirectory(file)) {
      throw new InputException("The report cannot be written to " + output + ": it is a folder.");
    }
    return file;
  }

  /** The page appears whole or not at all: written beside its place, then moved there. */
  private void write(Path file, String page) {
    Path unfinished = file.resolveSibling(file.toFile().getName() + ".unfinished");
    try {
      Files.writeString(unfinished, page, StandardCharsets.UTF_8);
      Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      unfinished.toFile().delete();
      throw new OuterWorldException(
          "The report could not be written to " + output + ": " + e.getMessage() + ".", e);
    }
  }

  private void tell(StoredJob stored, Path file) {
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("job", stored.key().job())
              .put("file", file.toString())
              .build());
    } else {
      program.console().out().printf("Wrote %s.%n", output);
    }
  }
}
