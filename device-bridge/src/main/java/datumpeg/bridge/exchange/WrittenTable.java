package datumpeg.bridge.exchange;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;

/** A table to be taken elsewhere, as RFC 4180 has it: comma, CRLF, a head of column names. */
public final class WrittenTable {
  private final List<String> columns;
  private final List<List<String>> rows = new ArrayList<>();

  public WrittenTable(List<String> columns) {
    this.columns = List.copyOf(columns);
  }

  /**
   * @throws IllegalArgumentException unless there is a cell for each column
   */
  public WrittenTable row(List<String> cells) {
    if (cells.size() != columns.size()) {
      throw new IllegalArgumentException(
          "A row of " + cells.size() + " cells; expected " + columns.size() + ".");
    }
    rows.add(List.copyOf(cells));
    return this;
  }

  public String csv() {
    StringWriter text = new StringWriter();
    CsvWriter writer = CsvWriter.builder().build(text);
    writer.writeRecord(columns);
    rows.forEach(writer::writeRecord);
    return text.toString();
  }
}
