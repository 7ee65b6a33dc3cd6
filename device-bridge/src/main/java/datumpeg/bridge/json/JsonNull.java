package datumpeg.bridge.json;

/** {@code null}. */
public record JsonNull() implements JsonValue {
  @Override
  public String describe() {
    return "null";
  }
}
