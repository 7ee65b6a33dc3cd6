package datumpeg.bridge.exchange;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * One row below the header.
 *
 * @param line where it begins in the file
 */
record TableRow(int line, Map<Column, String> fields) {
  TableRow {
    fields = Collections.unmodifiableMap(new EnumMap<>(fields));
  }

  /** The field without the blanks around it; empty if the table has no such column. */
  String text(Column column) {
    return fields.getOrDefault(column, "").strip();
  }
}
