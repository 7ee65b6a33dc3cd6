package datumpeg.bridge.exchange;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The columns a table of readings may have; the first five must be there. */
enum Column {
  STAGE,
  QUANTITY,
  TARGET,
  VALUE,
  UNIT,
  FACE,
  AT,
  METER,
  OPERATOR,
  NOTE,
  SETUP,
  UP,
  ROUND;

  /** The column's name in the table's first row. */
  String text() {
    return name().toLowerCase(Locale.ROOT);
  }

  boolean isRequired() {
    return compareTo(UNIT) <= 0;
  }

  static Optional<Column> ofText(String text) {
    return Arrays.stream(values()).filter(column -> column.text().equals(text)).findFirst();
  }

  static List<String> texts() {
    return Arrays.stream(values()).map(Column::text).toList();
  }
}
