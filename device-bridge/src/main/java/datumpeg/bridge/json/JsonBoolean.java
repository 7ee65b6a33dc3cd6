package datumpeg.bridge.json;

/** {@code true} or {@code false}. */
public record JsonBoolean(boolean value) implements JsonValue {
  @Override
  public String describe() {
    return "a boolean";
  }
}
