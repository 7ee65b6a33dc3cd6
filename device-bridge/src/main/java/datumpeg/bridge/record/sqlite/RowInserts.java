package datumpeg.bridge.record.sqlite;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Puts rows that follow one another in a chain into the file. A statement that carries many rows
 * says once what they have in common, and takes half the time of one statement for each.
 */
final class RowInserts {
  private static final String INTO =
      "INSERT INTO entry (organisation, job, origin, sequence, previous, kind, at, body, digest,"
          + " number) VALUES ";

  /** Parameters of a statement that belong to all of its rows, and further ones for each row. */
  private static final int COMMON = 5;

  private static final int EACH = 5;
  private static final int ROWS_AT_ONCE = 50;
  private static final String ONE = statement(1);
  private static final String MANY = statement(ROWS_AT_ONCE);

  private RowInserts() {}

  /**
   * @param rows of one job and one chain, each the one after the row before it
   */
  static void insert(Database inside, List<Chain.Link> rows) throws SQLException {
    int done = 0;
    for (; done + ROWS_AT_ONCE <= rows.size(); done += ROWS_AT_ONCE) {
      execute(inside.statement(MANY), rows.subList(done, done + ROWS_AT_ONCE));
    }
    for (Chain.Link row : rows.subList(done, rows.size())) {
      execute(inside.statement(ONE), List.of(row));
    }
  }

  /** The row before each row is the one before it in the statement, for the first a parameter. */
  private static String statement(int rows) {
    return INTO
        + IntStream.range(0, rows)
            .mapToObj(
                index -> {
                  int own = COMMON + EACH * index;
                  String previous = "?" + (index == 0 ? COMMON : own - 1);
                  return String.format(
                      "(?1, ?2, ?3, ?4 + %d, %s, ?%d, ?%d, ?%d, ?%d, ?%d)",
                      index, previous, own + 1, own + 2, own + 3, own + 4, own + 5);
                })
            .collect(Collectors.joining(", "));
  }

  private static void execute(PreparedStatement statement, List<Chain.Link> rows)
      throws SQLException {
    RowDigest.Row first = rows.get(0).row();
    statement.setString(1, first.organisation());
    statement.setString(2, first.job());
    statement.setString(3, first.origin());
    statement.setLong(4, first.sequence());
    statement.setString(5, first.previous());
    int parameter = COMMON;
    for (Chain.Link link : rows) {
      statement.setString(++parameter, link.row().kind());
      statement.setString(++parameter, link.row().at());
      statement.setString(++parameter, link.row().body());
      statement.setString(++parameter, link.digest());
      OptionalDouble number = link.entry().number();
      if (number.isPresent()) {
        statement.setDouble(++parameter, number.getAsDouble());
      } else {
        statement.setNull(++parameter, Types.REAL);
      }
    }
    statement.executeUpdate();
  }
}
