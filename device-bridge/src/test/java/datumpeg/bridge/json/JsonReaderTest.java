package datumpeg.bridge.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JsonReaderTest {

  @Test
  void everyKindOfValueIsRead() {
    assertEquals(
        new JsonArray(
            List.of(
                new JsonText("a"),
                new JsonInteger(-7),
                new JsonDecimal(new BigDecimal("1.50")),
                new JsonDecimal(new BigDecimal("123456789012345678901")),
                new JsonBoolean(true),
                new JsonNull(),
                new JsonArray(List.of()),
                new JsonObject(Map.of("k", new JsonInteger(1))))),
        JsonReader.read("[\"a\",-7,1.50,123456789012345678901,true,null,[],{\"k\":1}]", "test"));
  }

  @Test
  void membersKeepTheirOrder() {
    JsonObject object = JsonReader.readObject("{\"z\":1,\"a\":2,\"m\":3}", "test");
    assertEquals(List.of("z", "a", "m"), List.copyOf(object.members().keySet()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "{",
        "[1,",
        "[1 2]",
        "{\"a\":1,\"a\":2}",
        "nul",
        "01",
        "\"a\nb\"",
        "1 2",
        "{}x",
        "{\"a\"}",
        "'a'",
        "[1,]"
      })
  void whatIsNotOneJsonValueIsRefusedWithItsPlace(String text) {
    JsonException e = assertThrows(JsonException.class, () -> JsonReader.read(text, "site.json"));
    assertTrue(String.valueOf(e.getMessage()).startsWith("site.json"), e::getMessage);
    assertEquals(2, e.exitStatus());
  }

  @Test
  void theLineAndColumnOfAFaultAreNamed() {
    JsonException e =
        assertThrows(JsonException.class, () -> JsonReader.read("{\n  \"a\": ?\n}", "site.json"));
    assertTrue(
        String.valueOf(e.getMessage()).startsWith("site.json, line 2, column 8: "), e::getMessage);
  }

  @Test
  void endlessNestingIsRefused() {
    assertThrows(JsonException.class, () -> JsonReader.read("[".repeat(5000), "site.json"));
  }

  @Test
  void anObjectIsToldFromOtherValues() {
    assertThrows(JsonException.class, () -> JsonReader.readObject("[]", "site.json"));
  }

  @ParameterizedTest
  @CsvSource({"text", "integer", "smallInteger", "truth", "object", "array", "absent"})
  void aMemberOfAnotherShapeOrNoneIsNamed(String asked) {
    JsonObject object = JsonReader.readObject("{\"name\":null}", "test");
    JsonException e =
        assertThrows(
            JsonException.class,
            () -> {
              switch (asked) {
                case "text" -> object.text("name");
                case "integer" -> object.integer("name");
                case "smallInteger" -> object.smallInteger("name");
                case "truth" -> object.truth("name");
                case "object" -> object.object("name");
                case "array" -> object.array("name");
                default -> object.get("other name");
              }
            });
    assertTrue(String.valueOf(e.getMessage()).contains("name\" is "), e::getMessage);
  }

  @Test
  void anIntegerBeyond32BitsIsNotSmall() {
    JsonObject object = JsonReader.readObject("{\"n\":2147483648}", "test");
    assertEquals(2147483648L, object.integer("n"));
    assertThrows(JsonException.class, () -> object.smallInteger("n"));
  }
}
