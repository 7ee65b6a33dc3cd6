package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordDamagedException;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.EntryKind;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;

/** Reads rows back as entries. */
final class StoredRows {
  /** The columns in the order {@link #read} expects. */
  static final String COLUMNS =
      "row_id, organisation, job, kind, origin, sequence, at, body, previous, digest, number";

  private final Path file;

  StoredRows(Path file) {
    this.file = file;
  }

  List<StoredEntry<Entry>> readAll(ResultSet result) throws SQLException {
    List<StoredEntry<Entry>> rows = new ArrayList<>();
    while (result.next()) {
      rows.add(read(result));
    }
    return rows;
  }

  private StoredEntry<Entry> read(ResultSet result) throws SQLException {
    try {
      return new StoredEntry<>(
          UUID.fromString(result.getString(5)),
          result.getLong(6),
          new JobKey(result.getString(2), result.getString(3)),
          Timestamps.parse(result.getString(7)),
          result.getString(9),
          result.getString(10),
          entry(result));
    } catch (JsonException | IllegalArgumentException | DateTimeException e) {
      throw new RecordDamagedException(
          String.format(
              "Row %d of the record %s (chain %s, sequence %d) does not read: %s. Expected %s; run"
                  + " verify to see what was altered.",
              result.getLong(1),
              file,
              result.getString(5),
              result.getLong(6),
              e.getMessage(),
              "an entry of kind " + result.getString(4)),
          e);
    }
  }

  private static Entry entry(ResultSet result) throws SQLException {
    String word = result.getString(4);
    EntryKind kind =
        EntryKind.ofWord(word)
            .orElseThrow(() -> new IllegalArgumentException("unknown kind \"" + word + "\""));
    double number = result.getDouble(11);
    return kind.decode(
        JsonReader.readObject(result.getString(8), "body"),
        result.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(number));
  }
}
