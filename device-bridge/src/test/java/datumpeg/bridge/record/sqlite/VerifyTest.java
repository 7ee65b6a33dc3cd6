package datumpeg.bridge.record.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.record.DerivedNumber;
import datumpeg.bridge.record.Finding;
import datumpeg.bridge.record.Finding.Trouble;
import datumpeg.bridge.record.RecordDamagedException;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.Verification;
import datumpeg.bridge.record.entry.Head;
import datumpeg.bridge.record.sqlite.SqliteRecords.Mode;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.sqlite.SQLiteConfig;

/**
 * Three sessions of the same site: rows 1 to 6 of the file are the first chain (its session row and
 * five readings), 7 to 12 the second, 13 to 18 the third.
 */
class VerifyTest {
  private static final DerivedNumber FROM_TEXT =
      reading -> OptionalDouble.of(Double.parseDouble(reading.value()));

  @TempDir Path folder;
  private Path file;
  private List<Head> heads = List.of();

  @BeforeEach
  void fill() {
    file = folder.resolve("site.db");
    for (int session = 0; session < 3; session++) {
      try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE);
          RecordSession open = record.openSession(Rows.startAfterSeconds(session))) {
        open.appendAll(Rows.JOB, IntStream.range(0, 5).mapToObj(Rows::reading).toList());
        heads = record.heads();
      }
    }
  }

  @Test
  void anUntouchedRecordIsSound() {
    Verification found = verify(heads);
    assertTrue(found.isSound(), found.findings()::toString);
    assertEquals(18, found.rowCount());
    assertEquals(3, found.chainCount());
    assertEquals(heads, found.heads());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "organisation = 'other'",
        "job = 'other'",
        "kind = 'moved'",
        "at = '2026-03-02T08:15:30.000001Z'",
        "body = replace(body, '6.00', '7.00')",
        "previous = '" + "zz" + "' || substr(previous, 3)",
        "digest = '" + "zz" + "' || substr(digest, 3)"
      })
  void anAlteredColumnIsFoundInItsRowAndNowhereElse(String change) throws SQLException {
    Tampering.run(file, "UPDATE entry SET " + change + " WHERE row_id = 9");
    assertEquals(List.of("ALTERED 9"), rows(verify(List.of())));
  }

  @Test
  void anAlteredReadingIsNamedByPlaceKindJobAndTime() throws SQLException {
    Tampering.run(file, "UPDATE entry SET body = replace(body, '6.00', '7.00') WHERE row_id = 9");
    Finding finding = verify(List.of()).findings().get(0);
    assertEquals(heads.get(1).origin().toString(), finding.origin());
    assertEquals(3, finding.firstSequence());
    assertEquals(
        new Finding.Row(9, "local", "larkrise-01", "reading", "2026-03-02T08:15:31.000000Z"),
        finding.row().orElseThrow());
    assertTrue(
        finding.sentence().startsWith("Row 3 of chain " + finding.origin()), finding.sentence());
  }

  @Test
  void aRowWrittenAnewWithItsOwnDigestIsFound() throws SQLException {
    writeAnew(9);
    assertEquals(List.of("ALTERED 9"), rows(verify(List.of())));
  }

  @Test
  void theLastRowOfAChainWrittenAnewIsFoundByTheNextSession() throws SQLException {
    writeAnew(6);
    assertEquals(List.of("ALTERED 6"), rows(verify(List.of())));
  }

  @Test
  void theNewestRowWrittenAnewIsFoundOnlyByAHeadKeptElsewhere() throws SQLException {
    writeAnew(18);
    assertTrue(verify(List.of()).isSound());
    assertEquals(List.of("ALTERED 18"), rows(verify(heads)));
  }

  @Test
  void aMissingRowIsFound() throws SQLException {
    Tampering.run(file, "DELETE FROM entry WHERE row_id IN (3, 4)");
    Finding finding = only(verify(List.of()));
    assertEquals(Trouble.MISSING, finding.trouble());
    assertEquals(heads.get(0).origin().toString(), finding.origin());
    assertEquals(3, finding.firstSequence());
    assertEquals(4, finding.lastSequence());
  }

  @Test
  void aMissingFirstRowIsFound() throws SQLException {
    Tampering.run(file, "DELETE FROM entry WHERE row_id = 13");
    Finding finding = only(verify(List.of()));
    assertEquals(Trouble.MISSING, finding.trouble());
    assertEquals(1, finding.firstSequence());
    assertEquals(1, finding.lastSequence());
  }

  @Test
  void aMissingTailIsFoundByTheNextSession() throws SQLException {
    Tampering.run(file, "DELETE FROM entry WHERE row_id IN (5, 6)");
    Finding finding = only(verify(List.of()));
    assertEquals(Trouble.MISSING, finding.trouble());
    assertEquals(5, finding.firstSequence());
    assertEquals(6, finding.lastSequence());
  }

  @Test
  void aWholeMissingChainIsFoundThoughOnlyTheSessionAfterItNamesIt() throws SQLException {
    Tampering.run(file, "DELETE FROM entry WHERE row_id <= 6");
    Finding finding = only(verify(List.of()));
    assertEquals(Trouble.MISSING, finding.trouble());
    assertEquals(heads.get(0).origin().toString(), finding.origin());
    assertEquals(1, finding.firstSequence());
    assertEquals(6, finding.lastSequence());
  }

  @Test
  void theNewestTailCutOffIsFoundOnlyByAHeadKeptElsewhere() throws SQLException {
    Tampering.run(file, "DELETE FROM entry WHERE row_id >= 17");
    assertTrue(verify(List.of()).isSound());
    Finding finding = only(verify(heads));
    assertEquals(Trouble.MISSING, finding.trouble());
    assertEquals(5, finding.firstSequence());
    assertEquals(6, finding.lastSequence());
  }

  @Test
  void twoRowsExchangedAreFoundAsReordered() throws SQLException {
    Tampering.run(
        file,
        "UPDATE entry SET sequence = 99 WHERE row_id = 9",
        "UPDATE entry SET sequence = 3 WHERE row_id = 10",
        "UPDATE entry SET sequence = 4 WHERE row_id = 9");
    Verification found = verify(List.of());
    assertEquals(List.of("REORDERED 10", "REORDERED 9"), rows(found));
    assertTrue(
        found.findings().get(0).sentence().contains("stored as row 4 of its chain"),
        found.findings().get(0).sentence());
  }

  @Test
  void aRowTakenOutAndTheRestMovedUpIsFound() throws SQLException {
    Tampering.run(
        file,
        "DELETE FROM entry WHERE row_id = 15",
        "UPDATE entry SET sequence = sequence - 1 WHERE row_id > 15");
    assertEquals(List.of("REORDERED 16", "REORDERED 17", "REORDERED 18"), rows(verify(List.of())));
  }

  @Test
  void aNumberThatIsNotWhatItsTextComesToIsFound() throws SQLException {
    Tampering.run(file, "UPDATE entry SET number = number + 1e-9 WHERE row_id = 11");
    assertEquals(List.of("NUMBER_DIFFERS 11"), rows(verify(List.of())));
    try (SiteRecord record = SqliteRecords.open(file, Mode.READ)) {
      assertTrue(record.verify(DerivedNumber.NOT_CHECKED, List.of()).isSound());
    }
  }

  @Test
  void rulesTakenOutOfTheFileAreFound() throws SQLException {
    raw("DROP TRIGGER entry_is_never_deleted");
    Finding finding = only(verify(List.of()));
    assertEquals(Trouble.DAMAGED_FILE, finding.trouble());
    assertTrue(finding.sentence().contains("entry_is_never_deleted"), finding.sentence());
  }

  @Test
  void manyFindingsAreCountedAndTheFirstThousandTold() throws SQLException {
    try (SiteRecord record = SqliteRecords.open(file, Mode.WRITE);
        RecordSession open = record.openSession(Rows.START)) {
      open.appendAll(Rows.JOB, IntStream.range(0, 1200).mapToObj(Rows::reading).toList());
    }
    Tampering.run(file, "UPDATE entry SET body = replace(body, 'Amber', 'Umber')");
    Verification found = verify(List.of());
    assertEquals(Verification.MOST_FINDINGS, found.findings().size());
    assertEquals(18 + 1201, found.findingCount());
    assertFalse(found.isSound());
  }

  @Test
  void anAlteredRowThatDoesNotReadIsNamedWhenTheJobIsRead() throws SQLException {
    Tampering.run(file, "UPDATE entry SET body = json_remove(body, '$.value') WHERE row_id = 9");
    try (SiteRecord record = SqliteRecords.open(file, Mode.READ)) {
      RecordDamagedException e =
          assertThrows(RecordDamagedException.class, () -> record.log(Rows.JOB));
      Messages.assertSays(e, "Row 9", file.toString(), "value");
      assertEquals(4, e.exitStatus());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE entry SET number = 0 WHERE row_id = 2",
        "DELETE FROM entry WHERE row_id = 18",
        "INSERT OR REPLACE INTO entry SELECT * FROM entry WHERE row_id = 2",
        "INSERT OR REPLACE INTO entry SELECT 2, organisation, job, 'session',"
            + " 'a' || substr(origin, 2), 1, at, body, substr('"
            + "0000000000000000000000000000000000000000000000000000000000000000"
            + "', 1), digest, number FROM entry WHERE row_id = 1",
        "INSERT OR REPLACE INTO entry SELECT NULL, organisation, job, kind, origin, 7, at,"
            + " (SELECT body FROM entry WHERE row_id = 2), digest, previous, number FROM entry"
            + " WHERE row_id = 18",
        "INSERT INTO entry SELECT NULL, organisation, job, 'moved', origin, 8, at, '{}', digest,"
            + " previous, NULL FROM entry WHERE row_id = 18",
        "INSERT INTO entry SELECT NULL, organisation, job, 'moved', origin, 7, at, '{}', previous,"
            + " digest, NULL FROM entry WHERE row_id = 18"
      })
  void theFileItselfRefusesToAlterDeleteReplaceOrSkip(String statement) {
    SQLException e = assertThrows(SQLException.class, () -> raw(statement));
    assertEquals(org.sqlite.SQLiteErrorCode.SQLITE_CONSTRAINT, SqlFailures.codeOf(e));
    assertTrue(verify(heads).isSound());
  }

  private void raw(String statement) throws SQLException {
    try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
        Statement open = connection.createStatement()) {
      open.executeUpdate(statement);
    }
  }

  /** Changes a reading and gives the row a digest that fits. */
  private void writeAnew(long rowId) throws SQLException {
    Tampering.run(
        file,
        "UPDATE entry SET body = replace(body, '6.00', '7.00'), number = number + 1"
            + " WHERE row_id = "
            + rowId);
    String digest;
    try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
        Statement open = connection.createStatement();
        var row =
            open.executeQuery(
                "SELECT " + StoredRows.COLUMNS + " FROM entry WHERE row_id = " + rowId)) {
      digest = new RowDigest().of(CheckedRow.read(row, new RowDigest()).row());
    }
    Tampering.run(file, "UPDATE entry SET digest = '" + digest + "' WHERE row_id = " + rowId);
  }

  private Verification verify(List<Head> keptElsewhere) {
    try (SiteRecord record = SqliteRecords.open(file, Mode.READ)) {
      return record.verify(FROM_TEXT, keptElsewhere);
    }
  }

  private static Finding only(Verification verification) {
    assertEquals(1, verification.findings().size(), verification.findings()::toString);
    return verification.findings().get(0);
  }

  private static List<String> rows(Verification verification) {
    return verification.findings().stream()
        .map(finding -> finding.trouble() + " " + finding.row().orElseThrow().rowId())
        .toList();
  }
}
