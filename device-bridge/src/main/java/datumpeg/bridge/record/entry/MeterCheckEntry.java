package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonText;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One meter held against what is known. What it comes to is worked out from these values each time,
 * by what the meter states.
 *
 * @param meter the instrument's name
 * @param method how it was checked: {@code known-distance}, {@code zero-constant}, …
 * @param values what was read or known, as given with their units, by the method's labels
 * @param checkedAt when
 * @param operator who; may be empty
 * @param note what was remarked; may be empty
 */
public record MeterCheckEntry(
    String meter,
    String method,
    Map<String, List<String>> values,
    OffsetDateTime checkedAt,
    String operator,
    String note)
    implements Entry {
  public MeterCheckEntry {
    Texts.requireText(meter, "meter");
    Texts.requireText(method, "method");
    Map<String, List<String>> copy = new LinkedHashMap<>();
    values.forEach((label, texts) -> copy.put(label, List.copyOf(texts)));
    values = Collections.unmodifiableMap(copy);
  }

  @Override
  public EntryKind kind() {
    return EntryKind.METER_CHECK;
  }

  @Override
  public JsonObject body() {
    JsonObject.Builder byLabel = JsonObject.builder();
    values.forEach((label, texts) -> byLabel.put(label, JsonArray.ofTexts(texts)));
    return JsonObject.builder()
        .put("checkedAt", DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(checkedAt))
        .put("meter", meter)
        .put("method", method)
        .put("note", note)
        .put("operator", operator)
        .put("values", byLabel.build())
        .build();
  }

  static MeterCheckEntry from(JsonObject body) {
    Map<String, List<String>> values = new LinkedHashMap<>();
    JsonObject byLabel = body.object("values");
    byLabel.members().keySet().forEach(label -> values.put(label, texts(byLabel, label)));
    return new MeterCheckEntry(
        body.text("meter"),
        body.text("method"),
        values,
        OffsetDateTime.parse(body.text("checkedAt")),
        body.text("operator"),
        body.text("note"));
  }

  private static List<String> texts(JsonObject byLabel, String label) {
    return byLabel.array(label).stream()
        .map(
            value -> {
              if (value instanceof JsonText text) {
                return text.value();
              }
              throw new IllegalArgumentException(label + " holds what is no text");
            })
        .toList();
  }
}
