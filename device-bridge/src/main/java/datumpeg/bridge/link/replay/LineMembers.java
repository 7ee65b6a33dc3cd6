package datumpeg.bridge.link.replay;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonInteger;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonText;
import datumpeg.bridge.json.JsonValue;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The members of one JSON object; each is taken once, and what is left over is damage. */
final class LineMembers {
  private final Map<String, JsonValue> left;

  LineMembers(JsonObject object) {
    this.left = new LinkedHashMap<>(object.members());
  }

  static LineMembers of(String line) throws CaptureDamage {
    try {
      return new LineMembers(JsonReader.readObject(line, "its JSON text"));
    } catch (JsonException notJson) {
      String reason = String.valueOf(notJson.getMessage());
      String withoutStop = reason.endsWith(".") ? reason.substring(0, reason.length() - 1) : reason;
      throw new CaptureDamage(withoutStop, notJson);
    }
  }

  boolean has(String name) {
    return left.containsKey(name);
  }

  String text(String name) throws CaptureDamage {
    String value = textIfPresent(name);
    if (value == null) {
      throw new CaptureDamage("'" + name + "' is missing");
    }
    return value;
  }

  @Nullable String textIfPresent(String name) throws CaptureDamage {
    JsonValue value = left.remove(name);
    if (value == null) {
      return null;
    }
    if (value instanceof JsonText text) {
      return text.value();
    }
    throw new CaptureDamage("'" + name + "' is " + value.describe() + "; expected a text");
  }

  long number(String name) throws CaptureDamage {
    JsonValue value = left.remove(name);
    if (value instanceof JsonInteger number) {
      return number.value();
    }
    throw new CaptureDamage(
        "'" + name + "' is " + describe(value) + "; expected a whole number of 64 bits");
  }

  JsonObject object(String name) throws CaptureDamage {
    return object(name, left.remove(name));
  }

  static JsonObject object(String name, @Nullable JsonValue value) throws CaptureDamage {
    if (value instanceof JsonObject object) {
      return object;
    }
    throw new CaptureDamage("'" + name + "' is " + describe(value) + "; expected an object");
  }

  private static String describe(@Nullable JsonValue value) {
    return value == null ? "missing" : value.describe();
  }

  void refuseOthers() throws CaptureDamage {
    if (!left.isEmpty()) {
      throw new CaptureDamage("unknown key '" + left.keySet().iterator().next() + "'");
    }
  }
}
