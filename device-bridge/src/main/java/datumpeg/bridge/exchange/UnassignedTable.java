package datumpeg.bridge.exchange;

import datumpeg.bridge.failure.OuterWorldException;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/**
 * Values that nobody has said the target of, as a table of readings that a person completes and
 * enters. Each row is forced to the disk; the file is made by the first. One thread.
 */
public final class UnassignedTable {
  /** So many rows at most: a meter that sends by itself must not fill the disk. */
  public static final int MOST_ROWS = 10_000;

  private static final List<Column> COLUMNS =
      List.of(
          Column.STAGE,
          Column.QUANTITY,
          Column.TARGET,
          Column.VALUE,
          Column.UNIT,
          Column.AT,
          Column.OPERATOR,
          Column.NOTE);

  private final Path file;
  private int rowCount;

  public UnassignedTable(Path file) {
    this.file = file;
  }

  /**
   * A value without a target.
   *
   * @param quantity empty where several are possible
   * @param value a plain decimal number
   * @param at ISO 8601 with offset
   * @param note which targets it may be of, and where its bytes are; no other row has the same
   */
  public record Row(
      String stage,
      String quantity,
      String value,
      String unit,
      String at,
      String operator,
      String note) {}

  public Path file() {
    return file;
  }

  /** Rows that are in the file. */
  public int rowCount() {
    return rowCount;
  }

  /** Whether it has as many rows as may be. */
  public boolean isFull() {
    return rowCount >= MOST_ROWS;
  }

  /**
   * Adds a row.
   *
   * @throws OuterWorldException if the disk does not take it; the file is then as it was
   */
  public void add(Row row) {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      channel.position(channel.size());
      String line = line(cells(row));
      write(channel, channel.size() == 0 ? line(header()) + line : line);
      rowCount++;
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The table " + file + " could not be written: " + refused.getMessage() + ".", refused);
    }
  }

  /** All of it or nothing: a full disk takes part of a row. */
  private static void write(FileChannel channel, String text) throws IOException {
    long whole = channel.position();
    try {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    } catch (IOException refused) {
      channel.truncate(whole);
      throw refused;
    }
  }

  /**
   * Those of the rows that none of the tables has, completed by a person or not, in their order.
   *
   * @throws OuterWorldException if a table cannot be read
   */
  public static List<Row> notIn(List<Path> tables, List<Row> rows) {
    List<Row> left = rows;
    for (Path table : tables) {
      String text = text(table);
      left = left.stream().filter(row -> !text.contains(quoted(row.note()))).toList();
    }
    return left;
  }

  private static String text(Path table) {
    try {
      return new String(Files.readAllBytes(table), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new OuterWorldException(
          "The table " + table + " could not be read: " + unreadable.getMessage() + ".",
          unreadable);
    }
  }

  /** As it stands between quotes (RFC 4180, section 2). */
  private static String quoted(String note) {
    return note.replace("\"", "\"\"");
  }

  private static List<String> header() {
    return COLUMNS.stream().map(Column::text).toList();
  }

  private static List<String> cells(Row row) {
    return List.of(
        row.stage(),
        row.quantity(),
        "",
        row.value(),
        row.unit(),
        row.at(),
        row.operator(),
        row.note());
  }

  private static String line(List<String> cells) {
    StringWriter text = new StringWriter();
    CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text).writeRecord(cells);
    return text.toString();
  }
}
