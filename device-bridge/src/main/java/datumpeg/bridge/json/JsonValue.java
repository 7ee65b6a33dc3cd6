package datumpeg.bridge.json;

/** One JSON value. Every implementation is immutable. */
public sealed interface JsonValue
    permits JsonObject, JsonArray, JsonText, JsonInteger, JsonDecimal, JsonBoolean, JsonNull {

  /** What kind of value this is, in words, for messages: "an object", "a text". */
  String describe();
}
