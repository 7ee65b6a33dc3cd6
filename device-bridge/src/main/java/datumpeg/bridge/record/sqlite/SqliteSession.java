package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.json.CanonicalJson;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.SessionEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Adds rows to one chain. */
final class SqliteSession implements RecordSession {
  private static final String INSERT =
      "INSERT INTO entry (organisation, job, kind, origin, sequence, at, body, previous, digest,"
          + " number) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

  private static final String LAST_ROW =
      "SELECT sequence, at, digest FROM entry WHERE origin = ? ORDER BY sequence DESC LIMIT 1";

  /** Rows from which on a larger cache is worth its two statements. */
  private static final int MANY = 1000;

  private final Database database;
  private final SessionStart start;
  private final UUID origin;
  private final RowDigest digests = new RowDigest();
  private @Nullable Tip tip;
  private boolean closed;

  SqliteSession(Database database, SessionStart start) {
    this.database = database;
    this.start = start;
    this.origin = new TimeOrderedIds(start.clock()).next();
  }

  /** Where the chain has got to. */
  private record Tip(long sequence, Instant at, String digest) {}

  @Override
  public <E extends Entry> StoredEntry<E> append(JobKey job, E entry) {
    StoredEntry<Entry> stored = appendAll(job, List.of(entry)).get(0);
    return new StoredEntry<>(
        stored.origin(),
        stored.sequence(),
        job,
        stored.at(),
        stored.previous(),
        stored.digest(),
        entry);
  }

  @Override
  public synchronized List<StoredEntry<Entry>> appendAll(
      JobKey job, List<? extends Entry> entries) {
    if (closed) {
      throw new IllegalStateException("the session is closed");
    }
    requireStorable(job, entries);
    if (entries.isEmpty()) {
      return List.of();
    }
    // Forgotten until the commit, so that after a failure the chain's end is read from the file.
    @Nullable Tip known = tip;
    tip = null;
    String attempt = "store " + entries.size() + (entries.size() == 1 ? " row" : " rows");
    List<StoredEntry<Entry>> stored;
    if (known != null && entries.size() == 1) {
      stored =
          database.writeOne(attempt, inside -> List.of(insert(inside, known, job, entries.get(0))));
    } else if (entries.size() < MANY) {
      stored = database.write(attempt, inside -> insertAll(inside, known, job, entries));
    } else {
      stored = database.writeMany(attempt, inside -> insertAll(inside, known, job, entries));
    }
    StoredEntry<Entry> last = stored.get(stored.size() - 1);
    tip = new Tip(last.sequence(), last.at(), last.digest());
    return stored;
  }

  private static void requireStorable(JobKey job, List<? extends Entry> entries) {
    if (job.equals(JobKey.NONE)) {
      throw new IllegalArgumentException("only the session's own row belongs to no job");
    }
    if (entries.stream().anyMatch(SessionEntry.class::isInstance)) {
      throw new IllegalArgumentException("a session writes its own session row");
    }
  }

  private List<StoredEntry<Entry>> insertAll(
      Database inside, @Nullable Tip known, JobKey job, List<? extends Entry> entries)
      throws SQLException {
    Tip at = known == null ? lastRowOrFirst(inside) : known;
    List<StoredEntry<Entry>> stored = new ArrayList<>(entries.size());
    for (Entry entry : entries) {
      StoredEntry<Entry> row = insert(inside, at, job, entry);
      stored.add(row);
      at = new Tip(row.sequence(), row.at(), row.digest());
    }
    return stored;
  }

  private Tip lastRowOrFirst(Database inside) throws SQLException {
    PreparedStatement statement = inside.statement(LAST_ROW);
    statement.setString(1, origin.toString());
    try (ResultSet result = statement.executeQuery()) {
      if (result.next()) {
        return new Tip(
            result.getLong(1), Timestamps.parse(result.getString(2)), result.getString(3));
      }
    }
    SessionEntry entry =
        new SessionEntry(start.operator(), start.programVersion(), ChainHeads.notYetNamed(inside));
    StoredEntry<Entry> first =
        insert(inside, new Tip(0, Instant.MIN, RowDigest.NO_PREVIOUS), JobKey.NONE, entry);
    return new Tip(first.sequence(), first.at(), first.digest());
  }

  private StoredEntry<Entry> insert(Database inside, Tip before, JobKey job, Entry entry)
      throws SQLException {
    // A clock that was set back must not bring the order by time out of the order of the chain.
    Instant now = Timestamps.toMicroseconds(start.clock().instant());
    Instant at = now.isBefore(before.at()) ? before.at() : now;
    RowDigest.Row row =
        new RowDigest.Row(
            job.organisation(),
            job.job(),
            entry.kind().word(),
            origin.toString(),
            before.sequence() + 1,
            Timestamps.text(at),
            CanonicalJson.text(entry.body()),
            before.digest());
    String digest = digests.of(row);
    insert(inside, row, digest, entry);
    return new StoredEntry<>(origin, row.sequence(), job, at, row.previous(), digest, entry);
  }

  private static void insert(Database inside, RowDigest.Row row, String digest, Entry entry)
      throws SQLException {
    PreparedStatement statement = inside.statement(INSERT);
    statement.setString(1, row.organisation());
    statement.setString(2, row.job());
    statement.setString(3, row.kind());
    statement.setString(4, row.origin());
    statement.setLong(5, row.sequence());
    statement.setString(6, row.at());
    statement.setString(7, row.body());
    statement.setString(8, row.previous());
    statement.setString(9, digest);
    if (entry.number().isPresent()) {
      statement.setDouble(10, entry.number().getAsDouble());
    } else {
      statement.setNull(10, Types.REAL);
    }
    statement.executeUpdate();
  }

  @Override
  public synchronized void close() {
    closed = true;
  }
}
