package datumpeg.bridge.json;

import java.util.List;
import java.util.stream.Stream;

/** A JSON array. */
public record JsonArray(List<JsonValue> items) implements JsonValue {
  public JsonArray {
    items = List.copyOf(items);
  }

  public static JsonArray ofTexts(List<String> texts) {
    return of(texts.stream().map(JsonText::new));
  }

  public static JsonArray of(Stream<? extends JsonValue> items) {
    return new JsonArray(items.<JsonValue>map(item -> item).toList());
  }

  @Override
  public String describe() {
    return "an array";
  }
}
