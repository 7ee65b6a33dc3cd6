package datumpeg.bridge.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Map;

/** Writes a JSON value as text; equal values give equal text on every platform. Thread-safe. */
public final class JsonWriter {
  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();

  private JsonWriter() {}

  /** On one line, without white space. */
  public static String compact(JsonValue value) {
    StringWriter text = new StringWriter();
    try (JsonGenerator generator = FACTORY.createGenerator(text)) {
      write(value, generator);
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail to be written", e);
    }
    return text.toString();
  }

  /** Indented by two spaces, lines ended by a line feed, with one at the end. */
  public static String pretty(JsonValue value) {
    StringWriter text = new StringWriter();
    try (JsonGenerator generator = FACTORY.createGenerator(text)) {
      generator.setPrettyPrinter(printer());
      write(value, generator);
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory cannot fail to be written", e);
    }
    return text + "\n";
  }

  private static DefaultPrettyPrinter printer() {
    Separators separators =
        Separators.createDefaultInstance()
            .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
            .withObjectEmptySeparator("")
            .withArrayEmptySeparator("");
    DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
    return new DefaultPrettyPrinter(separators)
        .withObjectIndenter(indenter)
        .withArrayIndenter(indenter);
  }

  private static void write(JsonValue value, JsonGenerator generator) throws IOException {
    if (value instanceof JsonObject object) {
      generator.writeStartObject();
      for (Map.Entry<String, JsonValue> member : object.members().entrySet()) {
        generator.writeFieldName(member.getKey());
        write(member.getValue(), generator);
      }
      generator.writeEndObject();
    } else if (value instanceof JsonArray array) {
      generator.writeStartArray();
      for (JsonValue item : array.items()) {
        write(item, generator);
      }
      generator.writeEndArray();
    } else {
      writeLeaf(value, generator);
    }
  }

  private static void writeLeaf(JsonValue value, JsonGenerator generator) throws IOException {
    if (value instanceof JsonText text) {
      generator.writeString(text.value());
    } else if (value instanceof JsonInteger integer) {
      generator.writeNumber(integer.value());
    } else if (value instanceof JsonDecimal decimal) {
      generator.writeNumber(decimal.value());
    } else if (value instanceof JsonBoolean truth) {
      generator.writeBoolean(truth.value());
    } else {
      generator.writeNull();
    }
  }
}
