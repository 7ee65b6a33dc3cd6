/**
 * The record as one SQLite file: schema, append-only rules, chains of digests, verification.
 *
 * <p>Here: all SQL of the record, and the one use of the SQLite driver. Not here: what an entry
 * means; the shared archive. Read {@link datumpeg.bridge.record.sqlite.SqliteRecords} first, then
 * {@code schema-1.sql} beside it, and {@code docs/reference-record.md} for the whole.
 */
@NullMarked
package datumpeg.bridge.record.sqlite;

import org.jspecify.annotations.NullMarked;
