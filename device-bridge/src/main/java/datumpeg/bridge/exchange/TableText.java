package datumpeg.bridge.exchange;

import datumpeg.bridge.mistake.Mistakes;
import datumpeg.bridge.mistake.Nearest;
import datumpeg.bridge.mistake.Place;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The text of a table as rows with named fields (RFC 4180; UTF-8, a byte order mark is accepted).
 */
final class TableText {
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private final String name;
  private final Mistakes mistakes;

  private TableText(String name, Mistakes mistakes) {
    this.name = name;
    this.mistakes = mistakes;
  }

  /** The rows; what is wrong with the table's form is added to the mistakes. */
  static List<TableRow> read(byte[] bytes, String name, Mistakes mistakes) {
    TableText table = new TableText(name, mistakes);
    Optional<String> text = table.utf8(bytes);
    return text.isPresent() ? table.rows(text.get()) : List.of();
  }

  private Optional<String> utf8(byte[] bytes) {
    ByteBuffer input = ByteBuffer.wrap(bytes);
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(input).toString();
      return Optional.of(text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text);
    } catch (CharacterCodingException e) {
      int line = 1;
      for (int i = 0; i < input.position(); i++) {
        line += bytes[i] == '\n' ? 1 : 0;
      }
      mistakes.add(
          new Place(name, line, 0), "The text here is not UTF-8; save the table as CSV in UTF-8.");
      return Optional.empty();
    }
  }

  private List<TableRow> rows(String text) {
    List<CsvRecord> records = records(text);
    if (!mistakes.isEmpty()) {
      return List.of();
    }
    if (records.isEmpty()) {
      mistakes.add(Place.ofFile(name), "The table is empty; expected a row of column names.");
      return List.of();
    }
    List<Optional<Column>> header = header(records.get(0));
    List<TableRow> rows = new ArrayList<>();
    if (mistakes.isEmpty()) {
      records.subList(1, records.size()).forEach(record -> row(record, header, rows));
      if (rows.isEmpty() && mistakes.isEmpty()) {
        mistakes.add(Place.ofFile(name), "The table has no row below its column names.");
      }
    }
    return rows;
  }

  private List<CsvRecord> records(String text) {
    if (text.chars().filter(character -> character == '"').count() % 2 != 0) {
      mistakes.add(
          Place.ofFile(name),
          "A quote is opened and never closed; expected quotes in pairs (\" itself is written"
              + " \"\").");
      return List.of();
    }
    try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(text)) {
      return reader.stream().filter(TableText::saysSomething).toList();
    } catch (CsvParseException | java.io.IOException e) {
      mistakes.add(Place.ofFile(name), "This is not a CSV table: " + e.getMessage() + ".");
      return List.of();
    }
  }

  /** Spreadsheets like to end a table with rows of commas. */
  private static boolean saysSomething(CsvRecord record) {
    return record.getFields().stream().anyMatch(field -> !field.isBlank());
  }

  private List<Optional<Column>> header(CsvRecord record) {
    Place place = place(record);
    List<Optional<Column>> columns = new ArrayList<>();
    for (String field : record.getFields()) {
      String text = field.strip();
      Optional<Column> column = Column.ofText(text);
      if (column.isEmpty()) {
        mistakes.add(
            place,
            text.contains(";")
                ? "The columns are parted by ';'; expected ','."
                : "The column '"
                    + text
                    + "' is unknown; "
                    + Nearest.hint(text, Column.texts())
                    + ".");
      } else if (columns.contains(column)) {
        mistakes.add(place, "The column '" + text + "' is there twice.");
      }
      columns.add(column);
    }
    for (Column column : Column.values()) {
      if (column.isRequired() && !columns.contains(Optional.of(column))) {
        mistakes.add(place, "The column '" + column.text() + "' is missing.");
      }
    }
    return columns;
  }

  private void row(CsvRecord record, List<Optional<Column>> header, List<TableRow> rows) {
    if (record.getFieldCount() != header.size()) {
      mistakes.add(
          place(record),
          "The row has "
              + record.getFieldCount()
              + " fields; expected "
              + header.size()
              + ", one a column. A value with a decimal comma stands in quotes.");
      return;
    }
    Map<Column, String> fields = new EnumMap<>(Column.class);
    for (int i = 0; i < header.size(); i++) {
      String field = record.getField(i);
      header.get(i).ifPresent(column -> fields.put(column, field));
    }
    rows.add(new TableRow(place(record).line(), fields));
  }

  private Place place(CsvRecord record) {
    return new Place(name, Math.toIntExact(record.getStartingLineNumber()), 0);
  }
}
