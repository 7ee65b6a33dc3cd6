package datumpeg.bridge.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads a text as one JSON value. Thread-safe. */
public final class JsonReader {
  private static final int DEEPEST_NESTING = 100;
  private static final JsonFactory FACTORY =
      new JsonFactoryBuilder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNestingDepth(DEEPEST_NESTING)
                  .maxNumberLength(400)
                  .build())
          .build();

  private JsonReader() {}

  /**
   * @param place where the text is from, for messages: a file name, "line 7 of FILE"
   * @throws JsonException if the text is not exactly one JSON value, names a member of one object
   *     twice, or nests deeper than 100
   */
  public static JsonValue read(String text, String place) {
    try (JsonParser parser = FACTORY.createParser(text)) {
      parser.nextToken();
      JsonValue value = value(parser, place);
      if (parser.nextToken() != null) {
        throw new JsonException(
            at(
                    place,
                    parser.currentTokenLocation().getLineNr(),
                    parser.currentTokenLocation().getColumnNr())
                + "more text follows the JSON value; expected its end.");
      }
      return value;
    } catch (JsonProcessingException e) {
      throw new JsonException(at(place, line(e), column(e)) + e.getOriginalMessage(), e);
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail to be read", e);
    }
  }

  /**
   * As {@link #read}, for a text whose outermost value must be an object.
   *
   * @throws JsonException also if the value is anything else
   */
  public static JsonObject readObject(String text, String place) {
    JsonValue value = read(text, place);
    if (value instanceof JsonObject object) {
      return object;
    }
    throw new JsonException(place + ": found " + value.describe() + "; expected an object.");
  }

  private static JsonValue value(JsonParser parser, String place) throws IOException {
    JsonToken token = parser.currentToken();
    if (token == null) {
      throw new JsonException(place + ": found nothing; expected a JSON value.");
    }
    return switch (token) {
      case START_OBJECT -> object(parser, place);
      case START_ARRAY -> array(parser, place);
      case VALUE_STRING -> new JsonText(parser.getText());
      case VALUE_NUMBER_INT -> integer(parser);
      case VALUE_NUMBER_FLOAT -> new JsonDecimal(parser.getDecimalValue());
      case VALUE_TRUE -> new JsonBoolean(true);
      case VALUE_FALSE -> new JsonBoolean(false);
      case VALUE_NULL -> new JsonNull();
      default -> throw new JsonException(place + ": found " + token + "; expected a JSON value.");
    };
  }

  private static JsonValue integer(JsonParser parser) throws IOException {
    return parser.getNumberType() == JsonParser.NumberType.BIG_INTEGER
        ? new JsonDecimal(parser.getDecimalValue())
        : new JsonInteger(parser.getLongValue());
  }

  private static JsonObject object(JsonParser parser, String place) throws IOException {
    Map<String, JsonValue> members = new LinkedHashMap<>();
    for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
      parser.nextToken();
      members.put(name, value(parser, place));
    }
    return new JsonObject(members);
  }

  private static JsonArray array(JsonParser parser, String place) throws IOException {
    List<JsonValue> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(parser, place));
    }
    return new JsonArray(items);
  }

  private static String at(String place, int line, int column) {
    return place + ", line " + line + ", column " + column + ": ";
  }

  private static int line(JsonProcessingException e) {
    return e.getLocation() == null ? 1 : e.getLocation().getLineNr();
  }

  private static int column(JsonProcessingException e) {
    return e.getLocation() == null ? 1 : e.getLocation().getColumnNr();
  }
}
