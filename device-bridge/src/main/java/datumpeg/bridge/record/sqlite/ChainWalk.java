package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.Finding;
import datumpeg.bridge.record.Finding.Trouble;
import datumpeg.bridge.record.Verification;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.EntryKind;
import datumpeg.bridge.record.entry.Head;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.SessionEntry;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Walks every chain row by row and tells what does not add up. Used once, by one thread. */
final class ChainWalk {
  /** How far from its place a row is looked for before it is called altered. */
  private static final int REORDER_REACH = 100;

  /** Relative; room for another version's last digits, far below any resolution. */
  private static final double NUMBER_TOLERANCE = 1e-12;

  private static final String EVERY_ROW =
      "SELECT " + StoredRows.COLUMNS + " FROM entry ORDER BY origin, sequence";

  private final Database database;
  private final DerivedNumber derived;
  private final RowDigest digests = new RowDigest();
  private final Findings findings = new Findings();
  private final Map<String, StoredRow> lastRows = new LinkedHashMap<>();
  private final List<Claim> claims = new ArrayList<>();
  private long rowCount;
  private @Nullable StoredRow before;

  ChainWalk(Database database, DerivedNumber derived) {
    this.database = database;
    this.derived = derived;
  }

  /** A row as it stands. */
  private record StoredRow(
      long rowId, RowDigest.Row row, String digest, OptionalDouble number, boolean sound) {}

  /** That a row with this digest was there at some moment, and who says so. */
  private record Claim(Head head, String witness) {}

  Verification verify(List<Head> keptElsewhere) throws SQLException {
    try {
      checkFile();
      checkRules();
      walk();
      keptElsewhere.forEach(head -> claims.add(new Claim(head, "the head kept elsewhere")));
      checkClaims();
    } catch (SQLException e) {
      if (!SqlFailures.isDamage(e)) {
        throw e;
      }
      findings.addFile(
          "A page of the file is damaged; rows after chain "
              + lastOrigin()
              + " could not be read.");
    }
    return new Verification(rowCount, lastRows.size(), findings.list(), findings.count(), heads());
  }

  private void checkFile() throws SQLException {
    try (ResultSet result = database.statement("PRAGMA integrity_check(20)").executeQuery()) {
      while (result.next()) {
        String answer = result.getString(1);
        if (!"ok".equals(answer)) {
          findings.addFile("SQLite finds the file damaged: " + answer + ".");
        }
      }
    }
  }

  private void checkRules() throws SQLException {
    for (String rule : Schema.missingRules(database)) {
      findings.addFile(
          "The rule "
              + rule
              + " was taken out of the file: rows could be changed since. Expected it in place.");
    }
  }

  private void walk() throws SQLException {
    try (ResultSet result = database.statement(EVERY_ROW).executeQuery()) {
      while (result.next()) {
        rowCount++;
        StoredRow row = rowOf(result);
        visit(row);
        before = row;
        lastRows.put(row.row().origin(), row);
      }
    }
  }

  private StoredRow rowOf(ResultSet result) throws SQLException {
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
    return new StoredRow(
        result.getLong(1),
        row,
        digest,
        result.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(number),
        digestMatches(row, digest));
  }

  private boolean digestMatches(RowDigest.Row row, String digest) {
    try {
      return digests.of(row).equals(digest);
    } catch (IllegalArgumentException e) {
      // No canonical form, so no digest can have been taken of it: it was altered.
      return false;
    }
  }

  private void visit(StoredRow at) {
    boolean sameChain = before != null && before.row().origin().equals(at.row().origin());
    long expected = sameChain && before != null ? before.row().sequence() + 1 : 1;
    if (at.row().sequence() > expected) {
      findings.addMissing(at.row().origin(), expected, at.row().sequence() - 1, "rows follow it");
    } else if (at.sound()) {
      checkLink(sameChain ? before : null, at);
    }
    if (at.sound()) {
      checkBody(at);
    } else {
      reportUnsound(at);
    }
  }

  private void checkLink(@Nullable StoredRow ahead, StoredRow at) {
    String expected = ahead == null ? RowDigest.NO_PREVIOUS : ahead.digest();
    if (at.row().previous().equals(expected) || (ahead != null && !ahead.sound())) {
      return;
    }
    StoredRow suspect = ahead == null ? at : ahead;
    findings.add(
        Trouble.ALTERED,
        suspect.row().origin(),
        suspect.row().sequence(),
        identity(suspect),
        ahead == null
            ? "names a row before it, where a chain begins"
            : "was written anew: it is not the row that the next one was stored after");
  }

  private void reportUnsound(StoredRow at) {
    OptionalLong place = findings.isFull() ? OptionalLong.empty() : placeOf(at);
    findings.add(
        place.isPresent() ? Trouble.REORDERED : Trouble.ALTERED,
        at.row().origin(),
        at.row().sequence(),
        identity(at),
        place.isPresent()
            ? "was stored as row " + place.getAsLong() + " of its chain and stands out of order"
            : "was altered: its digest is not that of what stands in it");
  }

  private OptionalLong placeOf(StoredRow at) {
    long sequence = at.row().sequence();
    for (long reach = 1; reach <= REORDER_REACH; reach++) {
      if (digestMatches(at.row().withSequence(sequence + reach), at.digest())) {
        return OptionalLong.of(sequence + reach);
      }
      if (sequence > reach && digestMatches(at.row().withSequence(sequence - reach), at.digest())) {
        return OptionalLong.of(sequence - reach);
      }
    }
    return OptionalLong.empty();
  }

  private void checkBody(StoredRow at) {
    Optional<Entry> entry = entryOf(at);
    if (entry.isPresent() && entry.get() instanceof SessionEntry session) {
      String witness = "the session that began at " + at.row().at();
      session.heads().forEach(head -> claims.add(new Claim(head, witness)));
    } else if (entry.isPresent() && entry.get() instanceof ReadingEntry reading) {
      checkNumber(at, reading);
    }
  }

  private static Optional<Entry> entryOf(StoredRow at) {
    try {
      // The number is what is being checked, so the entry is read with a stand-in for it.
      return EntryKind.ofWord(at.row().kind())
          .map(
              kind ->
                  kind.decode(
                      JsonReader.readObject(at.row().body(), "body"), OptionalDouble.of(0)));
    } catch (JsonException | IllegalArgumentException | DateTimeException e) {
      // The digest says the body is what was stored; what it means is not for this walk to judge.
      return Optional.empty();
    }
  }

  private void checkNumber(StoredRow at, ReadingEntry reading) {
    OptionalDouble expected = derived.of(reading);
    if (expected.isEmpty()) {
      return;
    }
    double found = at.number().orElse(Double.NaN);
    double allowed = NUMBER_TOLERANCE * Math.max(1, Math.abs(expected.getAsDouble()));
    if (!(Math.abs(found - expected.getAsDouble()) <= allowed)) {
      findings.add(
          Trouble.NUMBER_DIFFERS,
          at.row().origin(),
          at.row().sequence(),
          identity(at),
          String.format(
              "has the number %s beside it; its text \"%s %s\" comes to %s",
              found, reading.value(), reading.unit(), expected.getAsDouble()));
    }
  }

  private void checkClaims() {
    Map<UUID, Claim> furthest = new LinkedHashMap<>();
    for (Claim claim : claims) {
      furthest.merge(
          claim.head().origin(),
          claim,
          (a, b) -> a.head().sequence() >= b.head().sequence() ? a : b);
    }
    furthest.values().forEach(this::checkPresent);
    claims.forEach(this::checkDigest);
  }

  private void checkPresent(Claim claim) {
    String origin = claim.head().origin().toString();
    @Nullable StoredRow last = lastRows.get(origin);
    long present = last == null ? 0 : last.row().sequence();
    if (claim.head().sequence() > present) {
      findings.addMissing(
          origin,
          present + 1,
          claim.head().sequence(),
          claim.witness() + " names the last of them");
    }
  }

  private void checkDigest(Claim claim) {
    Head head = claim.head();
    Optional<StoredRow> row = row(head);
    if (row.isPresent() && row.get().sound() && !row.get().digest().equals(head.digest())) {
      findings.add(
          Trouble.ALTERED,
          head.origin().toString(),
          head.sequence(),
          identity(row.get()),
          "was written anew: " + claim.witness() + " names another digest for it");
    }
  }

  private Optional<StoredRow> row(Head head) {
    return database.read(
        "verify a head",
        inside -> {
          String sql =
              "SELECT " + StoredRows.COLUMNS + " FROM entry WHERE origin = ? AND sequence = ?";
          var statement = inside.statement(sql);
          statement.setString(1, head.origin().toString());
          statement.setLong(2, head.sequence());
          try (ResultSet result = statement.executeQuery()) {
            return result.next() ? Optional.of(rowOf(result)) : Optional.empty();
          }
        });
  }

  private static Finding.Row identity(StoredRow at) {
    return new Finding.Row(
        at.rowId(), at.row().organisation(), at.row().job(), at.row().kind(), at.row().at());
  }

  private String lastOrigin() {
    return before == null ? "(none)" : before.row().origin();
  }

  private List<Head> heads() {
    List<Head> heads = new ArrayList<>();
    for (StoredRow last : lastRows.values()) {
      try {
        heads.add(
            new Head(UUID.fromString(last.row().origin()), last.row().sequence(), last.digest()));
      } catch (IllegalArgumentException e) {
        // An altered row may carry what is no head; it has been reported, and is left out here.
      }
    }
    return heads;
  }
}
