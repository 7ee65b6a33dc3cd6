package datumpeg.bridge.json;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A JSON object; its members keep the order in which they were put. */
public record JsonObject(Map<String, JsonValue> members) implements JsonValue {
  public JsonObject {
    members = Collections.unmodifiableMap(new LinkedHashMap<>(members));
  }

  public static Builder builder() {
    return new Builder();
  }

  public Optional<JsonValue> find(String name) {
    return Optional.ofNullable(members.get(name));
  }

  /**
   * @throws JsonException if the member is absent
   */
  public JsonValue get(String name) {
    return find(name)
        .orElseThrow(
            () -> new JsonException("The member \"" + name + "\" is missing in a JSON object."));
  }

  /**
   * @throws JsonException if the member is absent or not a text
   */
  public String text(String name) {
    return as(name, JsonText.class, "a text").value();
  }

  /**
   * @throws JsonException if the member is absent or not an integer
   */
  public long integer(String name) {
    return as(name, JsonInteger.class, "an integer").value();
  }

  /**
   * @throws JsonException if the member is absent, not an integer or beyond the range of an int
   */
  public int smallInteger(String name) {
    long value = integer(name);
    if (value != (int) value) {
      throw new JsonException(
          "The member \"" + name + "\" is " + value + "; expected an integer of 32 bits.");
    }
    return (int) value;
  }

  /**
   * @throws JsonException if the member is absent or not a boolean
   */
  public boolean truth(String name) {
    return as(name, JsonBoolean.class, "a boolean").value();
  }

  /**
   * @throws JsonException if the member is absent or not an object
   */
  public JsonObject object(String name) {
    return as(name, JsonObject.class, "an object");
  }

  /**
   * @throws JsonException if the member is absent or not an array
   */
  public List<JsonValue> array(String name) {
    return as(name, JsonArray.class, "an array").items();
  }

  private <V extends JsonValue> V as(String name, Class<V> type, String expected) {
    JsonValue value = get(name);
    if (!type.isInstance(value)) {
      throw new JsonException(
          "The member \"" + name + "\" is " + value.describe() + "; expected " + expected + ".");
    }
    return type.cast(value);
  }

  @Override
  public String describe() {
    return "an object";
  }

  /** Puts an object together. For one thread. */
  public static final class Builder {
    private final Map<String, JsonValue> members = new LinkedHashMap<>();

    private Builder() {}

    /**
     * @throws IllegalArgumentException if the name was put before
     */
    public Builder put(String name, JsonValue value) {
      if (members.put(name, value) != null) {
        throw new IllegalArgumentException("member put twice: " + name);
      }
      return this;
    }

    public Builder put(String name, String value) {
      return put(name, new JsonText(value));
    }

    public Builder put(String name, long value) {
      return put(name, new JsonInteger(value));
    }

    public Builder put(String name, boolean value) {
      return put(name, new JsonBoolean(value));
    }

    public JsonObject build() {
      return new JsonObject(members);
    }
  }
}
