package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.Growth;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.Mark;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.Set;

/**
 * Tells what was added since a mark, reading the added rows only. Rows are numbered in the order of
 * their commits, and none is ever altered or deleted, so that all rows up to a mark are known once
 * its row is found again.
 */
final class Growths {
  private static final String NEWEST =
      "SELECT row_id, digest FROM entry ORDER BY row_id DESC LIMIT 1";

  private static final String DIGEST = "SELECT digest FROM entry WHERE row_id = ?";

  private static final String TOUCHED =
      "SELECT DISTINCT job, organisation FROM entry WHERE row_id > ? AND job > ''";

  /** A void may stand under another job than the reading it withdraws. */
  private static final String ROBBED =
      "SELECT DISTINCT other.job, other.organisation FROM entry AS taken"
          + " JOIN entry AS other ON other.kind = 'reading' AND"
          + " json_extract(other.body, '$.id') = json_extract(taken.body, '$.reading')"
          + " WHERE taken.row_id > ? AND taken.kind = 'void'";

  /** A check of a meter says something of every job of the organisation that it may have read. */
  private static final String DOUBTED =
      "SELECT DISTINCT other.job, other.organisation FROM (SELECT DISTINCT organisation FROM entry"
          + " WHERE row_id > ? AND kind = 'meter-check') AS checked JOIN entry AS other"
          + " ON other.organisation = checked.organisation WHERE other.job > ''";

  private Growths() {}

  static Growth since(Database database, Mark mark) throws SQLException {
    Mark now = newest(database);
    boolean continues = mark.equals(Mark.START) || mark.digest().equals(digest(database, mark));
    Set<JobKey> touched = new HashSet<>();
    if (continues && now.row() > mark.row()) {
      collect(database, TOUCHED, mark, touched);
      collect(database, ROBBED, mark, touched);
      collect(database, DOUBTED, mark, touched);
    }
    return new Growth(continues, now, touched);
  }

  private static Mark newest(Database database) throws SQLException {
    try (ResultSet result = database.statement(NEWEST).executeQuery()) {
      return result.next() ? new Mark(result.getLong(1), result.getString(2)) : Mark.START;
    }
  }

  private static String digest(Database database, Mark mark) throws SQLException {
    PreparedStatement statement = database.statement(DIGEST);
    statement.setLong(1, mark.row());
    try (ResultSet result = statement.executeQuery()) {
      return result.next() ? result.getString(1) : "";
    }
  }

  private static void collect(Database database, String sql, Mark mark, Set<JobKey> into)
      throws SQLException {
    PreparedStatement statement = database.statement(sql);
    statement.setLong(1, mark.row());
    try (ResultSet result = statement.executeQuery()) {
      while (result.next()) {
        into.add(new JobKey(result.getString(2), result.getString(1)));
      }
    }
  }
}
