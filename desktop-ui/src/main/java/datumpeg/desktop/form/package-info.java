/**
 * The screen on which a job is filled in: whose it is, the building as the drawing gives it, drawn
 * while it is typed.
 *
 * <p>Here: the form's fields, what is wrong with each, the drawing of what is typed so far, in
 * words how it differs from the revision before, and its way into the record. Not here: what a job
 * file must say (room {@code datumpeg.bridge.jobfile}), which revision becomes which (room {@code
 * datumpeg.bridge.jobs}). Read {@link datumpeg.desktop.form.FormViewModel} first.
 */
@NullMarked
package datumpeg.desktop.form;

import org.jspecify.annotations.NullMarked;
