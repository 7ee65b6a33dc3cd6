/**
 * What one row of the record can say: one immutable Java record per kind of entry.
 *
 * <p>Here: the kinds, their checks and their JSON bodies. A new kind is a new record here, a name
 * in {@link datumpeg.bridge.record.entry.Entry}'s {@code permits} and a line in {@link
 * datumpeg.bridge.record.entry.EntryKind}. Not here: how rows are stored, chained or asked for;
 * what a reading means for a check. Read {@link datumpeg.bridge.record.entry.Entry} first, then
 * {@link datumpeg.bridge.record.entry.ReadingEntry}.
 */
@NullMarked
package datumpeg.bridge.record.entry;

import org.jspecify.annotations.NullMarked;
