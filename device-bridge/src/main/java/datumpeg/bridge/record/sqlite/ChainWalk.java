package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.record.DerivedNumber;
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
  /** Relative above 1; room for another version's last digits, far below any resolution. */
  private static final double NUMBER_TOLERANCE = 1e-12;

  private static final String EVERY_ROW =
      "SELECT " + StoredRows.COLUMNS + " FROM entry ORDER BY origin, sequence";

  private final Database database;
  private final DerivedNumber derived;
  private final RowDigest digests = new RowDigest();
  private final Findings findings = new Findings();
  private final HeadClaims claims = new HeadClaims();
  private final Map<String, CheckedRow> lastRows = new LinkedHashMap<>();
  private long rowCount;

  ChainWalk(Database database, DerivedNumber derived) {
    this.database = database;
    this.derived = derived;
  }

  Verification verify(List<Head> keptElsewhere) throws SQLException {
    keptElsewhere.forEach(head -> claims.add(head, "a head kept elsewhere"));
    try {
      checkFile();
      checkRules();
      walk();
      claims.check(database, lastRows, digests, findings);
    } catch (SQLException e) {
      if (!SqlFailures.isDamage(e)) {
        throw e;
      }
      findings.addFile(
          "A page of the file is damaged: reading stopped after " + rowCount + " rows.");
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
              + " was taken out of the file; expected it in place. Rows may have been changed since.");
    }
  }

  private void walk() throws SQLException {
    @Nullable CheckedRow ahead = null;
    try (ResultSet result = database.statement(EVERY_ROW).executeQuery()) {
      while (result.next()) {
        rowCount++;
        CheckedRow row = CheckedRow.read(result, digests);
        boolean sameChain = ahead != null && ahead.origin().equals(row.origin());
        checkPlace(sameChain ? ahead : null, row);
        if (row.sound()) {
          checkBody(row);
        } else {
          reportUnsound(row);
        }
        lastRows.put(row.origin(), row);
        ahead = row;
      }
    }
  }

  private void checkPlace(@Nullable CheckedRow ahead, CheckedRow row) {
    long expected = ahead == null ? 1 : ahead.sequence() + 1;
    if (row.sequence() > expected) {
      findings.addMissing(row.origin(), expected, row.sequence() - 1, "later ones are there");
    } else if (row.sound() && ahead != null && ahead.sound()) {
      if (!row.row().previous().equals(ahead.digest())) {
        findings.add(
            Trouble.ALTERED,
            ahead,
            "was written anew: it is not the row that the next one was stored after");
      }
    } else if (row.sound()
        && ahead == null
        && !row.row().previous().equals(RowDigest.NO_PREVIOUS)) {
      findings.add(Trouble.ALTERED, row, "names a row before it, where a chain begins");
    }
  }

  private void reportUnsound(CheckedRow row) {
    OptionalLong place = findings.isFull() ? OptionalLong.empty() : row.soundPlace(digests);
    if (place.isPresent()) {
      findings.add(
          Trouble.REORDERED,
          row,
          "is out of order: it was stored as row " + place.getAsLong() + " of its chain");
    } else {
      findings.add(
          Trouble.ALTERED, row, "was altered: its digest is not that of what stands in it");
    }
  }

  private void checkBody(CheckedRow row) {
    Optional<Entry> entry = entryOf(row);
    if (entry.isPresent() && entry.get() instanceof SessionEntry session) {
      String witness = "the session that began at " + row.row().at();
      session.heads().forEach(head -> claims.add(head, witness));
    } else if (entry.isPresent() && entry.get() instanceof ReadingEntry reading) {
      checkNumber(row, reading);
    }
  }

  private static Optional<Entry> entryOf(CheckedRow row) {
    try {
      // The number is what is being checked, so the entry is read with a stand-in for it.
      return EntryKind.ofWord(row.row().kind())
          .map(
              kind ->
                  kind.decode(
                      JsonReader.readObject(row.row().body(), "body"), OptionalDouble.of(0)));
    } catch (JsonException | IllegalArgumentException | DateTimeException e) {
      // The digest says the body is what was stored; what it means is not for this walk to judge.
      return Optional.empty();
    }
  }

  private void checkNumber(CheckedRow row, ReadingEntry reading) {
    OptionalDouble expected = derived.of(reading);
    if (expected.isEmpty()) {
      return;
    }
    double found = row.number().orElse(Double.NaN);
    double allowed = NUMBER_TOLERANCE * Math.max(1, Math.abs(expected.getAsDouble()));
    if (!(Math.abs(found - expected.getAsDouble()) <= allowed)) {
      findings.add(
          Trouble.NUMBER_DIFFERS,
          row,
          String.format(
              "has the number %s beside it, but its text \"%s\" comes to %s",
              found, (reading.value() + " " + reading.unit()).strip(), expected.getAsDouble()));
    }
  }

  private List<Head> heads() {
    List<Head> heads = new ArrayList<>();
    for (CheckedRow last : lastRows.values()) {
      try {
        heads.add(new Head(UUID.fromString(last.origin()), last.sequence(), last.digest()));
      } catch (IllegalArgumentException e) {
        // An altered row may carry what is no head; it has been reported, and is left out here.
      }
    }
    return heads;
  }
}
