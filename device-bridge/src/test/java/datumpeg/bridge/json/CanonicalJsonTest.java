package datumpeg.bridge.json;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Published cases are those of RFC 8785, "JSON Canonicalization Scheme (JCS)", 2020, less the
 * members that hold fractions; the second route is the canonicalizer of one of its authors.
 */
class CanonicalJsonTest {

  /** RFC 8785, sections 3.2.2 and 3.2.4: the members "string" and "literals" of the sample. */
  @Test
  void theSampleOfTheStandardComesOutAsPrintedThere() {
    JsonValue sample =
        JsonReader.read(
            """
            {
              "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
              "literals": [null, true, false]
            }
            """,
            "sample");
    assertEquals(
        "{\"literals\":[null,true,false],"
            + "\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
        CanonicalJson.text(sample));
  }

  /** RFC 8785, section 3.2.3: the members in the order printed there. */
  @Test
  void membersAreSortedByUtf16CodeUnitsAsInTheStandard() {
    JsonValue sample =
        JsonReader.read(
            """
            {
              "\\u20ac": "Euro Sign",
              "\\r": "Carriage Return",
              "\\ufb33": "Hebrew Letter Dalet With Dagesh",
              "1": "One",
              "\\ud83d\\ude00": "Emoji: Grinning Face",
              "\\u0080": "Control",
              "\\u00f6": "Latin Small Letter O With Diaeresis"
            }
            """,
            "sample");
    assertEquals(
        "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
            + "\"\u00f6\":\"Latin Small Letter O With Diaeresis\",\"\u20ac\":\"Euro Sign\","
            + "\"\ud83d\ude00\":\"Emoji: Grinning Face\","
            + "\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
        CanonicalJson.text(sample));
  }

  @Property(tries = 300, seed = "20260302")
  void anyValueComesOutAsTheOtherCanonicalizerWritesIt(@ForAll("objects") JsonObject value)
      throws IOException {
    assertArrayEquals(
        new JsonCanonicalizer(JsonWriter.compact(value)).getEncodedUTF8(),
        CanonicalJson.bytes(value));
  }

  @Property(tries = 300, seed = "20260302")
  void theCanonicalFormReadsBackAsTheSameValue(@ForAll("objects") JsonObject value) {
    assertEquals(value, JsonReader.read(CanonicalJson.text(value), "canonical form"));
  }

  @Provide
  Arbitrary<JsonObject> objects() {
    return objects(3);
  }

  private static Arbitrary<JsonObject> objects(int depth) {
    return Arbitraries.maps(texts(), values(depth)).ofMaxSize(4).map(JsonObject::new);
  }

  private static Arbitrary<JsonValue> values(int depth) {
    Arbitrary<JsonValue> leaves =
        Arbitraries.oneOf(
            texts().map(JsonText::new),
            Arbitraries.longs()
                .between(-CanonicalJson.LARGEST_INTEGER, CanonicalJson.LARGEST_INTEGER)
                .map(JsonInteger::new),
            Arbitraries.of(new JsonBoolean(true), new JsonBoolean(false), new JsonNull()));
    return depth == 0
        ? leaves
        : Arbitraries.oneOf(
            leaves,
            objects(depth - 1).map(object -> object),
            values(depth - 1).list().ofMaxSize(4).map(JsonArray::new));
  }

  /** Whole characters of every plane, control characters among them. */
  private static Arbitrary<String> texts() {
    return Arbitraries.oneOf(
            Arbitraries.integers().between(0, 0xd7ff),
            Arbitraries.integers().between(0, 0x7f),
            Arbitraries.integers().between(0xe000, 0x10ffff))
        .list()
        .ofMaxSize(8)
        .map(points -> points.stream().map(Character::toString).reduce("", String::concat));
  }

  @Test
  void emptyArraysAndObjectsAreWrittenWithoutSpace() {
    assertEquals("{}", CanonicalJson.text(new JsonObject(Map.of())));
    assertEquals("[]", CanonicalJson.text(new JsonArray(List.of())));
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.5", "1.0", "1e3", "9007199254740992", "-9007199254740992", "1e400"})
  void aFractionOrAnIntegerNotEveryReaderCanHoldIsRefused(String number) {
    JsonValue value = JsonReader.read("[" + number + "]", "test");
    assertThrows(IllegalArgumentException.class, () -> CanonicalJson.text(value));
  }

  @Test
  void theLargestIntegersAreWritten() {
    assertEquals("9007199254740991", CanonicalJson.text(new JsonInteger(9007199254740991L)));
    assertEquals("-9007199254740991", CanonicalJson.text(new JsonInteger(-9007199254740991L)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"\ud83d", "\ude00", "a\ud83db", "\ude00\ud83d"})
  void halfASurrogatePairIsRefused(String text) {
    assertThrows(IllegalArgumentException.class, () -> CanonicalJson.text(new JsonText(text)));
  }
}
