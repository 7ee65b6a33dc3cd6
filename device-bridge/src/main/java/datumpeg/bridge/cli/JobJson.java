package datumpeg.bridge.cli;

import datumpeg.analysis.building.Building;
import datumpeg.analysis.conform.Tolerance;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** A stored job as JSON: lengths in mm. */
final class JobJson {
  private JobJson() {}

  static JsonObject of(StoredJob stored, JobLog log, boolean withReadings) {
    JobIdentity identity = stored.job().identity();
    JsonObject.Builder json =
        JsonObject.builder()
            .put("format", 1)
            .put("job", identity.id())
            .put("organisation", identity.organisation())
            .put("name", identity.name())
            .put("site", identity.site())
            .put("crew", identity.crew())
            .put("slabBy", identity.slabBy())
            .put("started", identity.started().map(Object::toString).orElse(""))
            .put("revision", stored.revision())
            .put("jobDigest", stored.jobDigest())
            .put("building", building(stored.job().setOut().building()))
            .put(
                "tolerances",
                JsonArray.of(stored.job().tolerances().entrySet().stream().map(JobJson::tolerance)))
            .put(
                "meters", JsonArray.of(stored.job().meters().values().stream().map(JobJson::meter)))
            .put(
                "stages",
                JsonArray.of(stored.job().stages().stream().map(stage -> stage(stored, stage))))
            .put("moved", JsonArray.ofTexts(stored.moved().stream().map(m -> m.text()).toList()))
            .put("strays", strays(stored.strays()));
    if (withReadings) {
      Set<UUID> voided = log.voidedIds();
      json.put(
          "readings",
          JsonArray.of(log.readings().stream().map(reading -> reading(reading, voided))));
    }
    return json.build();
  }

  static JsonArray strays(List<StoredJob.Stray> strays) {
    return JsonArray.of(
        strays.stream()
            .map(
                stray ->
                    JsonObject.builder()
                        .put("reading", stray.readingId())
                        .put("stage", stray.stage())
                        .put("target", stray.target())
                        .put("why", stray.why())
                        .build()));
  }

  /** Millimetres, rounded half-even to a millionth. */
  static JsonDecimal millimetres(double metres) {
    BigDecimal value = BigDecimal.valueOf(metres * 1000).setScale(6, RoundingMode.HALF_EVEN);
    BigDecimal plain = value.stripTrailingZeros();
    return new JsonDecimal(plain.scale() < 1 ? plain.setScale(1) : plain);
  }

  private static JsonObject building(Building building) {
    return JsonObject.builder()
        .put("span", millimetres(building.spanMetres()))
        .put("length", millimetres(building.lengthMetres()))
        .put("eaveHeight", millimetres(building.eaveHeightMetres()))
        .put("bays", JsonArray.of(building.baysMetres().stream().map(JobJson::millimetres)))
        .put("frames", building.portalFrameCount())
        .build();
  }

  private static JsonObject tolerance(Map.Entry<String, Tolerance> tolerance) {
    return JsonObject.builder()
        .put("check", tolerance.getKey())
        .put("rule", RuleWords.of(tolerance.getValue().rule()))
        .put("source", tolerance.getValue().source())
        .build();
  }

  private static JsonObject meter(Meter meter) {
    return JsonObject.builder()
        .put("meter", meter.id())
        .put("quantity", meter.quantity().text())
        .put("stated", meter.stated())
        .build();
  }

  private static JsonObject stage(StoredJob stored, Stage stage) {
    return JsonObject.builder()
        .put("stage", stage.id())
        .put("title", stage.title())
        .put("holdPoint", stage.holdPoint())
        .put("checks", JsonArray.ofTexts(stage.checks()))
        .put("targetCount", MeasuringList.of(stored.job().setOut(), stage).items().size())
        .put("readingCount", readingCount(stored, stage))
        .build();
  }

  static long readingCount(StoredJob stored, Stage stage) {
    return stored.readings().stream().filter(reading -> reading.stage().equals(stage.id())).count();
  }

  private static JsonObject reading(StoredEntry<ReadingEntry> stored, Set<UUID> voided) {
    ReadingEntry entry = stored.entry();
    return JsonObject.builder()
        .put("reading", entry.id().toString())
        .put("stage", entry.stage())
        .put("quantity", entry.quantity())
        .put("target", entry.target())
        .put("value", entry.value())
        .put("unit", entry.unit())
        .put("face", entry.face())
        .put("meter", entry.meter())
        .put("round", entry.round())
        .put("at", entry.readAt().toString())
        .put("inForce", !voided.contains(entry.id()))
        .build();
  }
}
