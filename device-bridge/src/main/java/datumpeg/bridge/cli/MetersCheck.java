package datumpeg.bridge.cli;

import datumpeg.analysis.drift.CheckMethod;
import datumpeg.analysis.drift.DriftHistory;
import datumpeg.analysis.drift.MeterCheck;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.quantity.Dimension;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.collect.LiveLinks;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.MeterChecks;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.MeterCheckEntry;
import java.io.PrintStream;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The words of {@code meters check}, and what they do. One use. */
final class MetersCheck {
  @Parameters(index = "0", paramLabel = "METER", description = "The instrument's name in the job.")
  private String meter = "";

  @Parameters(
      index = "1..*",
      arity = "1..*",
      paramLabel = "LABEL=VALUE",
      description = {
        "A value with its unit, such as \"reading=12.001 m\"; repeat for repeats.",
        "With --link a LABEL alone is asked for and taken from the meter."
      })
  private List<String> values = new ArrayList<>();

  @Option(
      names = "--job",
      paramLabel = "JOB",
      required = true,
      description = "The job whose description of the meter counts.")
  private String job = "";

  @Option(
      names = "--method",
      paramLabel = "METHOD",
      required = true,
      description = "known-distance, zero-constant, two-peg or reversal.")
  private String method = "";

  @Option(
      names = "--link",
      paramLabel = "LINK",
      description = "Where labels without a value are read: serial:PATH or ble:ADDRESS.")
  private String link = "";

  @Option(
      names = "--profile",
      paramLabel = "PROFILE",
      description = "How the meter on the link speaks (default as in measure).")
  private String profile = "";

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description = "How long to wait for each reading from the link (default 60).")
  private int waitSeconds = 60;

  @Option(names = "--by", paramLabel = "NAME", description = "Who checks.")
  private String operator = "";

  @Option(names = "--note", paramLabel = "TEXT", description = "What is worth remembering.")
  private String note = "";

  int run(DatumpegCommand program) throws InterruptedException {
    requireMethod();
    takeFromLink(program);
    MeterCheckEntry entry = entry(program);
    try (SiteRecord record = Records.existing(program)) {
      StoredJob stored = StoredJob.load(record, job);
      MeterCheck check = evaluate(stored.jobAsMeasured(), entry);
      try (RecordSession session = record.openSession(Records.start(program, operator))) {
        session.append(stored.key(), entry);
      }
      int doubted =
          StoredJob.load(record, job).drift().doubts(itsReadings(stored)).stream()
              .mapToInt(found -> found.readingIds().size())
              .sum();
      tell(program, stored, check, doubted);
    }
    return 0;
  }

  private List<Reading> itsReadings(StoredJob stored) {
    return stored.readings().stream().filter(reading -> reading.meter().equals(meter)).toList();
  }

  private void requireMethod() {
    if (CheckMethod.ofText(method).isEmpty()) {
      List<String> known = Arrays.stream(CheckMethod.values()).map(CheckMethod::text).toList();
      throw new InputException(
          "--method is '" + method + "'; " + Nearest.hint(method, known) + ".");
    }
  }

  /** Gives each label that has no value the reading that comes for it. */
  private void takeFromLink(DatumpegCommand program) throws InterruptedException {
    List<String> bare = values.stream().filter(value -> value.indexOf('=') < 0).toList();
    if (link.isEmpty()) {
      return;
    }
    if (bare.isEmpty()) {
      throw new InputException(
          "Every label has a value, so that there is nothing to read from --link; give LABEL alone,"
              + " such as reading.");
    }
    requireJob(program);
    LinkAddress address = MetersCommand.live(link);
    MeterProfile spoken =
        profile.isEmpty()
            ? LiveLinks.usualProfile(address)
            : Records.profiles(program).named(profile);
    Iterator<String> taken =
        new MeterShots(program, address, spoken, MeterLinks.seconds("--wait", waitSeconds))
            .take(program, bare)
            .iterator();
    values.replaceAll(value -> value.indexOf('=') < 0 ? value + "=" + taken.next() : value);
  }

  /** Before anyone walks to a meter for a job that is not there. */
  private void requireJob(DatumpegCommand program) {
    try (SiteRecord record = Records.existing(program)) {
      StoredJob.load(record, job);
    }
  }

  private MeterCheckEntry entry(DatumpegCommand program) {
    return new MeterCheckEntry(
        meter,
        method,
        byLabel(),
        OffsetDateTime.now(program.console().clock()).withOffsetSameInstant(ZoneOffset.UTC),
        operator,
        note);
  }

  private Map<String, List<String>> byLabel() {
    Map<String, List<String>> byLabel = new LinkedHashMap<>();
    for (String value : values) {
      int equals = value.indexOf('=');
      if (equals < 1) {
        throw new InputException(
            "'"
                + value
                + "' is no value; expected LABEL=VALUE, such as \"reading=12.001 m\", or --link and"
                + " the meter's link to read it from.");
      }
      byLabel
          .computeIfAbsent(value.substring(0, equals), label -> new ArrayList<>())
          .add(value.substring(equals + 1).strip());
    }
    return byLabel;
  }

  private static MeterCheck evaluate(Job job, MeterCheckEntry entry) {
    try {
      return MeterChecks.evaluate(job, entry);
    } catch (IllegalArgumentException e) {
      String why = String.valueOf(e.getMessage());
      throw new InputException("Nothing was stored: " + why + (why.endsWith(".") ? "" : "."), e);
    }
  }

  private void tell(DatumpegCommand program, StoredJob stored, MeterCheck check, int doubted) {
    if (program.json()) {
      Records.print(program, json(stored, check, doubted));
      return;
    }
    PrintStream out = program.console().out();
    out.printf(
        "%s of %s: error %s ± %s (k = 2), one reading may be off by %s.%n",
        method,
        meter,
        DriftHistory.shown(check, check.error().value(), true),
        DriftHistory.shown(check, check.error().expanded(), false),
        DriftHistory.shown(check, check.limit(), false));
    out.println(verdict(check));
    if (!stored.jobAsMeasured().meters().containsKey(meter)) {
      out.printf(
          "%s describes no meter %s (it has: %s); what is assumed of one it does not describe counted"
              + " here.%n",
          stored.key(), meter, String.join(", ", stored.jobAsMeasured().meters().keySet()));
    }
    if (check.scatterProbability().orElse(1) < 0.05) {
      out.println(
          "The readings scatter more than the meter states: the aim, the point or the meter is"
              + " not steady.");
    }
    if (doubted > 0) {
      out.printf(
          "%d reading(s) of %s that were taken with it are in doubt, by this check or one before;"
              + " 'reduce' names them.%n",
          doubted, stored.key());
    }
  }

  private static String verdict(MeterCheck check) {
    String probability =
        " (probability " + LengthDisplay.decimal(check.probability(), 3) + " that it is within)";
    return switch (check.verdict()) {
      case CONFORMING -> "Within its stated accuracy" + probability + ".";
      case NONCONFORMING ->
          "OUTSIDE its stated accuracy" + probability + ". Do not measure with it as it is.";
      case UNDECIDED ->
          "Too close to call"
              + probability
              + "; more readings, or a distance known better, would decide.";
    };
  }

  private JsonObject json(StoredJob stored, MeterCheck check, int doubted) {
    return JsonObject.builder()
        .put("format", 1)
        .put("job", stored.key().job())
        .put("meter", meter)
        .put("method", method)
        .put("unit", check.method().dimension() == Dimension.ANGLE ? "deg" : "mm")
        .put("error", number(check, check.error().value()))
        .put("expandedUncertainty", number(check, check.error().expanded()))
        .put("limit", number(check, check.limit()))
        .put("probability", JsonDecimal.of(check.probability()))
        .put("verdict", check.verdict().text())
        .put("doubtedCount", doubted)
        .build();
  }

  private static JsonDecimal number(MeterCheck check, double value) {
    return JsonDecimal.of(
        check.method().dimension() == Dimension.ANGLE ? StrictMath.toDegrees(value) : value * 1000);
  }
}
