package datumpeg.bridge.json;

/** A JSON number written without fraction or exponent, within the range of a long. */
public record JsonInteger(long value) implements JsonValue {
  @Override
  public String describe() {
    return "an integer";
  }
}
