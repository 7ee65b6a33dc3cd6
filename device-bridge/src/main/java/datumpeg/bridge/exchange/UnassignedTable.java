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
import java.util.ArrayDeque;
import java.util.Deque;
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

  /** So many rows wait at most for a disk that takes none. */
  public static final int MOST_WAITING = 500;

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
  private final Deque<String> waiting = new ArrayDeque<>();
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

  /** Rows that are in the file. */
  public int rowCount() {
    return rowCount;
  }

  /** Rows that the disk has not taken yet. */
  public int waitingCount() {
    return waiting.size();
  }

  /** Adds a row; false if there are as many as may be, or as many wait. */
  public boolean add(Row row) {
    if (rowCount + waiting.size() >= MOST_ROWS || waiting.size() >= MOST_WAITING) {
      return false;
    }
    waiting.add(line(cells(row)));
    drain();
    return true;
  }

  /** Tries to write the rows that wait. */
  public void drain() {
    if (waiting.isEmpty()) {
      return;
    }
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      channel.position(channel.size());
      while (!waiting.isEmpty()) {
        write(channel, rowCount == 0 ? line(header()) + waiting.element() : waiting.element());
        waiting.remove();
        rowCount++;
      }
    } catch (IOException refused) {
      LOG.debug("{} could not be written", file, refused);
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
