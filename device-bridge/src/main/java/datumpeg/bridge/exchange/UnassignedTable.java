package datumpeg.bridge.exchange;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Values that nobody has said the target of, as a table of readings that a person completes and
 * enters. Each row is forced to the disk; the file is made by the first. One thread.
 */
public final class UnassignedTable {
  /** So many rows at most: a meter that sends by itself must not fill the disk. */
  public static final int MOST_ROWS = 10_000;

  private static final Logger LOG = LoggerFactory.getLogger(UnassignedTable.class);

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
   * @param note which targets it may be of, and where its bytes are
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

  public int rowCount() {
    return rowCount;
  }

  /** Adds a row; false if there are as many as may be, or it cannot be written. */
  public boolean add(Row row) {
    if (rowCount >= MOST_ROWS) {
      return false;
    }
    String text = rowCount == 0 ? line(header()) + line(cells(row)) : line(cells(row));
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
      rowCount++;
      return true;
    } catch (IOException refused) {
      LOG.warn("{} could not be written", file, refused);
      return false;
    }
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
