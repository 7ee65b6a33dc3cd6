package datumpeg.bridge.record.sqlite;

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
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import org.jspecify.annotations.Nullable;

/** Adds rows to one chain. */
final class SqliteSession implements RecordSession {
  private static final String LAST_ROW =
      "SELECT sequence, at, digest FROM entry WHERE origin = ? ORDER BY sequence DESC LIMIT 1";

  /** Rows from which on a larger cache is worth its two statements. */
  private static final int MANY = 1000;

  /** Rows that another thread makes up at a time. */
  private static final int BLOCK = 250;

  private final Database database;
  private final SessionStart start;
  private Chain chain;
  private int openingCount;
  private Chain.@Nullable Tip tip;
  private boolean closed;

  SqliteSession(Database database, SessionStart start) {
    this.database = database;
    this.start = start;
    this.openingCount = database.openingCount();
    this.chain = new Chain(new TimeOrderedIds(start.clock()).next(), start.clock());
  }

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
    if (openingCount != database.openingCount()) {
      openingCount = database.openingCount();
      chain = new Chain(new TimeOrderedIds(start.clock()).next(), start.clock());
      tip = null;
    }
    // Forgotten until the commit, so that after a failure the chain's end is read from the file.
    Chain.@Nullable Tip known = tip;
    tip = null;
    String attempt = "store " + entries.size() + (entries.size() == 1 ? " row" : " rows");
    List<StoredEntry<Entry>> stored;
    if (known != null && entries.size() == 1) {
      stored = database.writeOne(attempt, inside -> insert(inside, known, job, entries));
    } else if (entries.size() < MANY) {
      stored = database.write(attempt, inside -> insertAll(inside, known, job, entries));
    } else {
      stored = database.writeMany(attempt, inside -> insertAll(inside, known, job, entries));
    }
    tip = tipOf(stored.get(stored.size() - 1));
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
      Database inside, Chain.@Nullable Tip known, JobKey job, List<? extends Entry> entries)
      throws SQLException {
    return insert(inside, known == null ? lastRowOrFirst(inside) : known, job, entries);
  }

  private Chain.Tip lastRowOrFirst(Database inside) throws SQLException {
    PreparedStatement statement = inside.statement(LAST_ROW);
    statement.setString(1, chain.origin().toString());
    try (ResultSet result = statement.executeQuery()) {
      if (result.next()) {
        return new Chain.Tip(
            result.getLong(1), Timestamps.parse(result.getString(2)), result.getString(3));
      }
    }
    SessionEntry entry =
        new SessionEntry(start.operator(), start.programVersion(), ChainHeads.notYetNamed(inside));
    return tipOf(insert(inside, Chain.Tip.NONE, JobKey.NONE, List.of(entry)).get(0));
  }

  private static Chain.Tip tipOf(StoredEntry<?> row) {
    return new Chain.Tip(row.sequence(), row.at(), row.digest());
  }

  /** While a block of rows goes into the file, another thread makes up the block after it. */
  private List<StoredEntry<Entry>> insert(
      Database inside, Chain.Tip end, JobKey job, List<? extends Entry> entries)
      throws SQLException {
    List<StoredEntry<Entry>> stored = new ArrayList<>(entries.size());
    List<Chain.Link> links = chain.after(end, job, block(entries, 0));
    for (int from = BLOCK; !links.isEmpty(); from += BLOCK) {
      Chain.Tip tip = links.get(links.size() - 1).tip();
      List<? extends Entry> following = block(entries, from);
      ForkJoinTask<List<Chain.Link>> next =
          ForkJoinTask.adapt(() -> chain.after(tip, job, following));
      if (!following.isEmpty()) {
        next.fork();
      }
      RowInserts.insert(inside, links);
      links.forEach(link -> stored.add(link.stored(chain.origin(), job)));
      links = following.isEmpty() ? List.of() : next.join();
    }
    return stored;
  }

  private static List<? extends Entry> block(List<? extends Entry> entries, int from) {
    return entries.subList(Math.min(from, entries.size()), Math.min(from + BLOCK, entries.size()));
  }

  @Override
  public synchronized void close() {
    closed = true;
  }
}
