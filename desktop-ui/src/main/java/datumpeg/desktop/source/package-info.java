/**
 * What the window knows of a record: read off the JavaFX thread, handed over as immutable values.
 *
 * <p>Here: what the screens need of a record, following it live, and what is said when it cannot be
 * read. Not here: how a job is reduced (room {@code datumpeg.analysis.reduce}), threads (room
 * background), texts and nodes. Read {@link datumpeg.desktop.source.RecordState} first.
 */
@NullMarked
package datumpeg.desktop.source;

import org.jspecify.annotations.NullMarked;
