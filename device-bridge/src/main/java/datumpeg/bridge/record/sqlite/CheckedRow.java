package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.Finding;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A row as it stands, and whether its digest is that of what stands in it.
 *
 * @param sound whether it is
 */
record CheckedRow(
    long rowId, RowDigest.Row row, String digest, OptionalDouble number, boolean sound) {
  /** How far from its place a row is looked for before it is called altered. */
  private static final int REORDER_REACH = 100;

  /** Reads {@link StoredRows#COLUMNS}. */
  static CheckedRow read(ResultSet result, RowDigest digests) throws SQLException {
    RowDigest.Row row =
        new RowDigest.Row(
            result.getString(2),
            result.getString(3),
            result.getString(4),
            result.getString(5),
            result.getLong(6),
            result.getString(7),
            result.getString(8),
            result.getString(9));
    String digest = result.getString(10);
    double number = result.getDouble(11);
    return new CheckedRow(
        result.getLong(1),
        row,
        digest,
        result.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(number),
        matches(row, digest, digests));
  }

  private static boolean matches(RowDigest.Row row, String digest, RowDigest digests) {
    try {
      return digests.of(row).equals(digest);
    } catch (IllegalArgumentException e) {
      // No canonical form, so no digest can have been taken of it: it was altered.
      return false;
    }
  }

  String origin() {
    return row.origin();
  }

  long sequence() {
    return row.sequence();
  }

  /** The sequence at which this row would be sound; empty if there is none nearby. */
  OptionalLong soundPlace(RowDigest digests) {
    for (long reach = 1; reach <= REORDER_REACH; reach++) {
      for (long place : new long[] {sequence() + reach, sequence() - reach}) {
        if (place >= 1 && matches(row.withSequence(place), digest, digests)) {
          return OptionalLong.of(place);
        }
      }
    }
    return OptionalLong.empty();
  }

  /** Names the row in a finding. */
  Finding.Row identity() {
    return new Finding.Row(rowId, row.organisation(), row.job(), row.kind(), row.at());
  }
}
