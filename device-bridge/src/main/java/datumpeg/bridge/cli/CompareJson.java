package datumpeg.bridge.cli;

import datumpeg.analysis.compare.ComparedGroup;
import datumpeg.analysis.compare.Comparison;
import datumpeg.analysis.compare.Difference;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonDecimal;
import datumpeg.bridge.json.JsonNull;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonValue;
import java.util.List;
import java.util.OptionalDouble;

/** Comparisons as JSON; numbers rounded half-even to 1e-6. */
final class CompareJson {
  private static final int DECIMALS = 6;

  private CompareJson() {}

  static JsonObject of(String by, List<Comparison> comparisons, List<String> unread) {
    return JsonObject.builder()
        .put("format", 1)
        .put("by", by)
        .put("comparisons", JsonArray.of(comparisons.stream().map(CompareJson::comparison)))
        .put("notes", JsonArray.ofTexts(unread))
        .build();
  }

  private static JsonObject comparison(Comparison comparison) {
    return JsonObject.builder()
        .put("check", comparison.question().filter().check())
        .put("unit", comparison.unit())
        .put("round", Choice.word(comparison.question().rounds()))
        .put("jobCount", comparison.jobCount())
        .put("confidence", decimal(comparison.confidence()))
        .put("jointConfidence", decimal(comparison.jointConfidence()))
        .put("groups", JsonArray.of(comparison.groups().stream().map(CompareJson::group)))
        .put(
            "differences",
            JsonArray.of(comparison.differences().stream().map(CompareJson::difference)))
        .put(
            "spread",
            JsonObject.builder()
                .put("betweenJobs", optional(comparison.spread().betweenJobs()))
                .put("withinJobs", optional(comparison.spread().withinJobs()))
                .build())
        .put("severalLevels", comparison.severalLevels())
        .put("sentences", JsonArray.ofTexts(comparison.sentences()))
        .build();
  }

  private static JsonObject group(ComparedGroup group) {
    return JsonObject.builder()
        .put("name", group.name())
        .put("jobCount", group.jobCount())
        .put("outcomeCount", group.outcomeCount())
        .put("mean", decimal(group.mean()))
        .put("halfWidth", optional(group.halfWidth()))
        .put("observedSpread", optional(group.observedSpread()))
        .put("measuringPart", decimal(group.measuringPart()))
        .put("ownSpread", optional(group.ownSpread()))
        .put("scatterWithinJobs", optional(group.meanScatter()))
        .build();
  }

  private static JsonObject difference(Difference difference) {
    return JsonObject.builder()
        .put("one", difference.one())
        .put("other", difference.other())
        .put("difference", decimal(difference.difference()))
        .put("lower", decimal(difference.lower()))
        .put("upper", decimal(difference.upper()))
        .put("degreesOfFreedom", difference.degreesOfFreedom())
        .put("shown", difference.isShown())
        .build();
  }

  private static JsonValue optional(OptionalDouble value) {
    return value.isPresent() ? decimal(value.getAsDouble()) : new JsonNull();
  }

  private static JsonDecimal decimal(double value) {
    return JsonDecimal.rounded(value, DECIMALS);
  }
}
