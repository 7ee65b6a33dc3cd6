package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.record.Finding.Trouble;
import datumpeg.bridge.record.entry.Head;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Gathers which rows were there at some moment, by whose word, and looks whether they still are.
 */
final class HeadClaims {
  private static final String ROW =
      "SELECT " + StoredRows.COLUMNS + " FROM entry WHERE origin = ? AND sequence = ?";

  private record Claim(Head head, String witness) {}

  private final List<Claim> claims = new ArrayList<>();

  void add(Head head, String witness) {
    claims.add(new Claim(head, witness));
  }

  /**
   * @param lastRows the last row found of every chain
   */
  void check(
      Database database, Map<String, CheckedRow> lastRows, RowDigest digests, Findings findings)
      throws SQLException {
    Map<UUID, Claim> furthest = new LinkedHashMap<>();
    for (Claim claim : claims) {
      furthest.merge(
          claim.head().origin(),
          claim,
          (one, other) -> one.head().sequence() >= other.head().sequence() ? one : other);
    }
    furthest.values().forEach(claim -> checkPresent(claim, lastRows, findings));
    for (Claim claim : claims) {
      checkDigest(claim, database, digests, findings);
    }
  }

  private static void checkPresent(
      Claim claim, Map<String, CheckedRow> lastRows, Findings findings) {
    String origin = claim.head().origin().toString();
    @Nullable CheckedRow last = lastRows.get(origin);
    long present = last == null ? 0 : last.sequence();
    if (claim.head().sequence() > present) {
      findings.addMissing(
          origin,
          present + 1,
          claim.head().sequence(),
          claim.witness() + " names the last of them");
    }
  }

  private static void checkDigest(
      Claim claim, Database database, RowDigest digests, Findings findings) throws SQLException {
    PreparedStatement statement = database.statement(ROW);
    statement.setString(1, claim.head().origin().toString());
    statement.setLong(2, claim.head().sequence());
    try (ResultSet result = statement.executeQuery()) {
      if (result.next()) {
        CheckedRow row = CheckedRow.read(result, digests);
        // A row that is not sound in itself has been reported already.
        if (row.sound() && !row.digest().equals(claim.head().digest())) {
          findings.add(
              Trouble.ALTERED,
              row,
              "was written anew: " + claim.witness() + " names another digest for it");
        }
      }
    }
  }
}
