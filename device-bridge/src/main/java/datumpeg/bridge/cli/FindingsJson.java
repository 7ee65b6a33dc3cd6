package datumpeg.bridge.cli;

import datumpeg.analysis.check.AdjustedReading;
import datumpeg.analysis.check.LevelEstimate;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.PointEstimate;
import datumpeg.analysis.conform.JointConformance;
import datumpeg.analysis.conform.Limits;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.remedy.LinePlacement;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonBoolean;
import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonNull;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonText;
import datumpeg.bridge.json.JsonValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Findings as the JSON document other programs rely on, form 1. Lengths in millimetres, points in
 * metres, all rounded half-even to 1e-6; a covariance in square metres to 1e-12.
 */
final class FindingsJson {
  private static final int DECIMALS = 6;
  private static final int COVARIANCE_DECIMALS = 12;

  private FindingsJson() {}

  /**
   * @param strays readings that the plan has no place for: told among the notes of their stage, or
   *     beside the stages where theirs is not told
   */
  static JsonObject of(
      Findings findings, List<StageFindings> stages, List<StoredJob.Stray> strays, String version) {
    return JsonObject.builder()
        .put("format", 1)
        .put("job", findings.job())
        .put("jobDigest", findings.jobDigest())
        .put("analysisVersion", version)
        .put("stages", JsonArray.of(stages.stream().map(stage -> stage(stage, strays))))
        .put("notes", JsonArray.of(homeless(stages, strays)))
        .build();
  }

  /** Strays of stages that are not among those told. */
  private static Stream<JsonObject> homeless(
      List<StageFindings> stages, List<StoredJob.Stray> strays) {
    return strays.stream()
        .filter(stray -> stages.stream().noneMatch(stage -> stage.stage().equals(stray.stage())))
        .map(stray -> note(note(stray)));
  }

  private static Note note(StoredJob.Stray stray) {
    return new Note(
        Note.Kind.INFORMATION,
        "Left out: the reading of "
            + stray.target()
            + ", stage "
            + stray.stage()
            + ": "
            + stray.why(),
        List.of(stray.readingId()));
  }

  private static JsonObject stage(StageFindings stage, List<StoredJob.Stray> strays) {
    List<Note> notes = new ArrayList<>(stage.notes());
    strays.stream()
        .filter(stray -> stray.stage().equals(stage.stage()))
        .forEach(stray -> notes.add(note(stray)));
    return JsonObject.builder()
        .put("stage", stage.stage())
        .put("readingCount", stage.readingCount())
        .put(
            "answer",
            JsonObject.builder()
                .put("kind", stage.answer().kind().text())
                .put("text", stage.answer().sentence())
                .put("first", stage.answer().first())
                .build())
        .put("joint", joint(stage.joint()))
        .put("outcomes", JsonArray.of(stage.outcomes().stream().map(FindingsJson::outcome)))
        .put("points", points(stage))
        .put("levels", levels(stage))
        .put("causes", JsonArray.of(stage.causes().stream().map(cause -> cause(cause, stage))))
        .put("placement", placement(stage.placement()))
        .put("notes", JsonArray.of(notes.stream().map(FindingsJson::note)))
        .put("networks", JsonArray.of(stage.networks().stream().map(FindingsJson::network)))
        .build();
  }

  private static JsonObject outcome(Outcome outcome) {
    OutcomeUnit unit = outcome.unit();
    Optional<Limits> limits = outcome.limits();
    return JsonObject.builder()
        .put("check", outcome.check())
        .put("target", outcome.target())
        .put("round", outcome.round())
        .put("unit", unit.symbol())
        .put("nominal", optional(outcome.nominal(), unit))
        .put("measured", decimal(unit.fromSi(outcome.measured())))
        .put("deviation", decimal(unit.fromSi(outcome.deviation())))
        .put("expandedUncertainty", decimal(unit.fromSi(outcome.expandedUncertainty())))
        .put("coverage", decimal(outcome.coverage()))
        .put("lower", optional(limits.map(Limits::lower).orElse(OptionalDouble.empty()), unit))
        .put("upper", optional(limits.map(Limits::upper).orElse(OptionalDouble.empty()), unit))
        .put("limitSource", text(limits.map(Limits::source)))
        .put(
            "probability",
            outcome.probability().isPresent()
                ? decimal(outcome.probability().getAsDouble())
                : new JsonNull())
        .put("verdict", text(outcome.verdict().map(Verdict::text)))
        .put("stale", outcome.stale())
        .put("remedy", outcome.remedy())
        .put("aside", outcome.aside())
        .put("readings", JsonArray.ofTexts(outcome.readingIds()))
        .build();
  }

  private static JsonObject points(StageFindings stage) {
    JsonObject.Builder points = JsonObject.builder();
    stage.points().forEach((name, point) -> points.put(name, point(point)));
    return points.build();
  }

  private static JsonObject point(PointEstimate point) {
    return JsonObject.builder()
        .put("x", decimal(point.xMetres()))
        .put("y", decimal(point.yMetres()))
        .put("ux", decimal(Math.sqrt(point.xVariance())))
        .put("uy", decimal(Math.sqrt(point.yVariance())))
        .put("cxy", JsonDecimal.rounded(point.covariance(), COVARIANCE_DECIMALS))
        .build();
  }

  private static JsonObject levels(StageFindings stage) {
    JsonObject.Builder levels = JsonObject.builder();
    stage.levels().forEach((name, level) -> levels.put(name, level(level)));
    return levels.build();
  }

  private static JsonObject level(LevelEstimate level) {
    return JsonObject.builder()
        .put("x", decimal(level.xMetres()))
        .put("y", decimal(level.yMetres()))
        .put("level", decimal(OutcomeUnit.MILLIMETRE.fromSi(level.levelMetres())))
        .put("u", decimal(OutcomeUnit.MILLIMETRE.fromSi(level.standardUncertaintyMetres())))
        .build();
  }

  private static JsonObject joint(JointConformance joint) {
    return JsonObject.builder()
        .put("outcomes", joint.count())
        .put("least", decimal(joint.least()))
        .put("most", decimal(joint.most()))
        .build();
  }

  private static JsonValue placement(Optional<LinePlacement> placement) {
    return placement.<JsonValue>map(FindingsJson::placement).orElseGet(JsonNull::new);
  }

  private static JsonObject placement(LinePlacement placement) {
    OutcomeUnit unit = OutcomeUnit.MILLIMETRE;
    return JsonObject.builder()
        .put("fits", fits(placement))
        .put("short", decimal(unit.fromSi(placement.shortMetres())))
        .put("u", decimal(unit.fromSi(placement.standardUncertaintyMetres())))
        .put("at", placement.shortAt())
        .put("allowed", optional(placement.allowedMetres(), unit))
        .put("offsets", JsonArray.of(placement.offsets().stream().map(FindingsJson::offset)))
        .build();
  }

  /** Null where it is too close to call. */
  private static JsonValue fits(LinePlacement placement) {
    return placement.is(Verdict.UNDECIDED) ? new JsonNull() : new JsonBoolean(placement.fits());
  }

  private static JsonObject offset(LinePlacement.Offset offset) {
    OutcomeUnit unit = OutcomeUnit.MILLIMETRE;
    return JsonObject.builder()
        .put("line", offset.line())
        .put("edge", offset.edge())
        .put("planned", decimal(unit.fromSi(offset.plannedMetres())))
        .put("mark", decimal(unit.fromSi(offset.metres())))
        .put("u", decimal(unit.fromSi(offset.standardUncertaintyMetres())))
        .build();
  }

  private static JsonObject cause(Cause cause, StageFindings stage) {
    return JsonObject.builder()
        .put("verdict", cause.kind().text())
        .put("text", cause.sentence())
        .put("action", cause.action())
        .put("symptoms", JsonArray.ofTexts(cause.symptoms()))
        .put("readings", JsonArray.ofTexts(behind(cause, stage)))
        .build();
  }

  /** The readings behind the symptoms of a cause, each once. */
  private static List<String> behind(Cause cause, StageFindings stage) {
    return stage.outcomes().stream()
        .filter(found -> cause.symptoms().contains(found.check() + " " + found.target()))
        .flatMap(found -> found.readingIds().stream())
        .distinct()
        .sorted()
        .toList();
  }

  private static JsonObject network(Network network) {
    return JsonObject.builder()
        .put("name", network.name())
        .put("degreesOfFreedom", network.degreesOfFreedom())
        .put("varianceFactor", optional(network.varianceFactor()))
        .put("probability", optional(network.probability()))
        .put("readings", JsonArray.of(network.readings().stream().map(FindingsJson::adjusted)))
        .build();
  }

  private static JsonObject adjusted(AdjustedReading reading) {
    OutcomeUnit unit = OutcomeUnit.MILLIMETRE;
    return JsonObject.builder()
        .put("reading", reading.readingId())
        .put("target", reading.target())
        .put("observed", decimal(unit.fromSi(reading.observedMetres())))
        .put("adjusted", decimal(unit.fromSi(reading.adjustedMetres())))
        .put("residual", decimal(unit.fromSi(reading.residualMetres())))
        .put("redundancy", decimal(reading.redundancy()))
        .put("standardizedResidual", optional(reading.standardizedResidual()))
        .put("smallestDetectableSlip", optional(reading.smallestDetectableSlipMetres(), unit))
        .build();
  }

  private static JsonObject note(Note note) {
    return JsonObject.builder()
        .put("kind", note.kind().text())
        .put("text", note.text())
        .put("readings", JsonArray.ofTexts(note.readingIds()))
        .build();
  }

  private static JsonValue optional(OptionalDouble si, OutcomeUnit unit) {
    return si.isPresent() ? decimal(unit.fromSi(si.getAsDouble())) : new JsonNull();
  }

  private static JsonValue optional(OptionalDouble number) {
    return number.isPresent() ? decimal(number.getAsDouble()) : new JsonNull();
  }

  private static JsonValue text(Optional<String> text) {
    return text.<JsonValue>map(JsonText::new).orElseGet(JsonNull::new);
  }

  private static JsonDecimal decimal(double value) {
    return JsonDecimal.rounded(value, DECIMALS);
  }
}
