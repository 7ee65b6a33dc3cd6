/**
 * The record of a site: what can be stored in it and what can be asked of it.
 *
 * <p>Here: the record's interface, what it answers with, and the ways in which it can fail. Not
 * here: SQL, files and pages ({@code record.sqlite}); what one row says ({@code record.entry});
 * what readings come to. Read {@link datumpeg.bridge.record.SiteRecord} first.
 */
@NullMarked
package datumpeg.bridge.record;

import org.jspecify.annotations.NullMarked;
