package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.entry.Head;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** Finds the last rows of chains. */
final class ChainHeads {
  // Steps from chain to chain along the index instead of reading every row.
  private static final String ALL =
      """
      WITH RECURSIVE chain (origin) AS (
        SELECT min(origin) FROM entry
        UNION ALL
        SELECT (SELECT min(origin) FROM entry WHERE origin > chain.origin)
        FROM chain WHERE chain.origin IS NOT NULL
      ),
      head AS (
        SELECT entry.origin, entry.sequence, entry.digest
        FROM chain JOIN entry ON entry.origin = chain.origin
          AND entry.sequence = (SELECT max(sequence) FROM entry WHERE origin = chain.origin)
      )
      """;

  private static final String UNNAMED =
      """
      , named AS (
        SELECT json_extract(item.value, '$.origin') AS origin,
               json_extract(item.value, '$.sequence') AS sequence
        FROM entry, json_each(entry.body, '$.heads') AS item
        WHERE entry.job = '' AND entry.organisation = '' AND entry.kind = 'session'
      )
      SELECT origin, sequence, digest FROM head
      WHERE (origin, sequence) NOT IN (SELECT origin, sequence FROM named)
      ORDER BY origin
      """;

  private ChainHeads() {}

  static List<Head> all(Database database) throws SQLException {
    return heads(database, ALL + "SELECT origin, sequence, digest FROM head ORDER BY origin");
  }

  /** The heads that no session row names yet. */
  static List<Head> notYetNamed(Database database) throws SQLException {
    return heads(database, ALL + UNNAMED);
  }

  private static List<Head> heads(Database database, String sql) throws SQLException {
    PreparedStatement statement = database.statement(sql);
    List<Head> heads = new ArrayList<>();
    try (ResultSet result = statement.executeQuery()) {
      while (result.next()) {
        heads.add(
            new Head(UUID.fromString(result.getString(1)), result.getLong(2), result.getString(3)));
      }
    }
    return heads;
  }
}
