package datumpeg.bridge.json;

import java.util.Objects;

/** A JSON string. */
public record JsonText(String value) implements JsonValue {
  public JsonText {
    Objects.requireNonNull(value, "value");
  }

  @Override
  public String describe() {
    return "a text";
  }
}
