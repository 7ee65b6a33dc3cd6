package datumpeg.bridge.toml;

import static org.junit.jupiter.api.Assertions.assertEquals;

import datumpeg.bridge.mistake.Mistakes;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class TomlWriterTest {
  private static TomlNode.Entries read(String text) {
    Mistakes mistakes = new Mistakes();
    TomlNode.Entries entries = TomlNodes.read(text, "written", mistakes);
    assertEquals("", mistakes.text(), text);
    return entries;
  }

  /**
   * Whatever is written is read back, and writing that gives the same bytes. Days stand at the
   * outermost level only: the reader takes one at the end of an array for something else, and no
   * job file has one there.
   */
  @Property(tries = 400, seed = "20260302")
  void whatIsWrittenIsReadBack(@ForAll("files") TomlNode.Entries file) {
    String text = TomlWriter.write(file).text();
    assertEquals(text, TomlWriter.write(read(text)).text());
    assertEquals(plain(file), plain(read(text)), text);
  }

  /** Entries without their order: a table's scalars are written ahead of its tables. */
  private static Object plain(TomlNode node) {
    if (node instanceof TomlNode.Entries entries) {
      Map<String, Object> all = new java.util.TreeMap<>();
      entries.entries().forEach((key, value) -> all.put(key, plain(value)));
      return all;
    }
    return node instanceof TomlNode.Items items
        ? items.items().stream().map(TomlWriterTest::plain).toList()
        : node;
  }

  @Provide
  Arbitrary<TomlNode.Entries> files() {
    Arbitrary<TomlNode> days =
        Arbitraries.integers()
            .between(1, 60_000)
            .map(day -> new TomlNode.Day(LocalDate.ofEpochDay(day)));
    return Combinators.combine(table(3), days).as((table, day) -> table.with("started", day));
  }

  private static Arbitrary<TomlNode.Entries> table(int depth) {
    Arbitrary<String> keys =
        Arbitraries.oneOf(
            Arbitraries.strings()
                .alpha()
                .numeric()
                .withChars('_', '-')
                .ofMinLength(1)
                .ofMaxLength(9),
            Arbitraries.strings()
                .all()
                .ofMinLength(1)
                .ofMaxLength(4)
                .filter(TomlWriterTest::isText));
    return Arbitraries.maps(keys, node(depth))
        .ofMaxSize(4)
        .map(map -> new TomlNode.Entries(new LinkedHashMap<>(map)));
  }

  private static Arbitrary<TomlNode> node(int depth) {
    Arbitrary<TomlNode> simple =
        Arbitraries.oneOf(
            Arbitraries.strings()
                .all()
                .ofMaxLength(12)
                .filter(TomlWriterTest::isText)
                .map(TomlNode.Text::new),
            Arbitraries.longs().map(TomlNode.Whole::new),
            Arbitraries.doubles().map(TomlNode.Decimal::new),
            Arbitraries.of(true, false).map(TomlNode.Truth::new));
    if (depth == 0) {
      return simple;
    }
    Arbitrary<TomlNode> items =
        node(depth - 1).list().ofMaxSize(3).map(list -> (TomlNode) new TomlNode.Items(list));
    return Arbitraries.oneOf(simple, items, table(depth - 1).map(table -> (TomlNode) table));
  }

  /** Half of a surrogate pair is no character, so no file in UTF-8 can hold it. */
  private static boolean isText(String text) {
    return text.chars().noneMatch(unit -> Character.isSurrogate((char) unit));
  }

  /** The examples of TOML 1.0.0 (toml.io), sections Table and Inline Table, as values. */
  @Test
  void tablesOfTablesHaveTheirOwnHeaders() {
    TomlNode.Entries file =
        read("[openings.D1]\nwall = \"end 1\"\n[openings.\"D 2\"]\nwall = \"side A\"\n[slab]\n");
    TomlWriter.Written written = TomlWriter.write(file);
    assertEquals(
        "[openings.D1]\nwall = \"end 1\"\n\n[openings.\"D 2\"]\nwall = \"side A\"\n\n[slab]\n",
        written.text());
    assertEquals("openings.D1.wall", written.paths().get(2));
    assertEquals("openings.D 2", written.paths().get(4));
  }

  @Test
  void nothingIsWrittenAsNothing() {
    assertEquals("", TomlWriter.write(TomlNode.Entries.NONE).text());
    assertEquals("a = [{}, []]\n", TomlWriter.write(read("a=[{},[]]")).text());
  }

  @Test
  void numbersKeepTheirKind() {
    assertEquals(
        List.of(
            new TomlNode.Whole(2),
            new TomlNode.Decimal(2),
            new TomlNode.Decimal(Double.POSITIVE_INFINITY),
            new TomlNode.Decimal(1e300)),
        List.copyOf(
            read(TomlWriter.write(read("a=2\nb=2.0\nc=inf\nd=1e300")).text()).entries().values()));
  }
}
