package datumpeg.bridge.link.replay;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;

/** One JSON object of strings, whole numbers and such objects, on one line. */
final class JsonLine {
  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

  private JsonLine() {}

  /**
   * Reads the object.
   *
   * @throws IOException if the text is anything else
   */
  static Map<String, Object> read(String text) throws IOException {
    try (JsonParser parser = FACTORY.createParser(text)) {
      if (parser.nextToken() != JsonToken.START_OBJECT) {
        throw new IOException("no JSON object");
      }
      Map<String, Object> object = object(parser, 0);
      if (parser.nextToken() != null) {
        throw new IOException("text after the JSON object");
      }
      return object;
    }
  }

  private static Map<String, Object> object(JsonParser parser, int depth) throws IOException {
    Map<String, Object> object = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String name = parser.currentName();
      JsonToken token = parser.nextToken();
      if (token == JsonToken.VALUE_STRING) {
        object.put(name, parser.getText());
      } else if (token == JsonToken.VALUE_NUMBER_INT) {
        object.put(name, parser.getLongValue());
      } else if (token == JsonToken.START_OBJECT && depth < 2) {
        object.put(name, object(parser, depth + 1));
      } else {
        throw new IOException("'" + name + "' is neither a string nor a whole number");
      }
    }
    return object;
  }

  static String write(Map<String, ?> object) {
    StringWriter text = new StringWriter();
    try (JsonGenerator generator = FACTORY.createGenerator(text)) {
      write(generator, object);
    } catch (IOException impossible) {
      throw new UncheckedIOException("a string cannot be written to memory", impossible);
    }
    return text.toString();
  }

  private static void write(JsonGenerator generator, Map<?, ?> object) throws IOException {
    generator.writeStartObject();
    for (Map.Entry<?, ?> member : object.entrySet()) {
      generator.writeFieldName(String.valueOf(member.getKey()));
      Object value = member.getValue();
      if (value instanceof Map<?, ?> inner) {
        write(generator, inner);
      } else if (value instanceof Number number) {
        generator.writeNumber(number.longValue());
      } else {
        generator.writeString(String.valueOf(value));
      }
    }
    generator.writeEndObject();
  }
}
