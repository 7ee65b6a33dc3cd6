/**
 * An outcome set as a document: one page of text, complete in itself.
 *
 * <p>Here: which sections the document has, in which order, and what each says. Not here: how a
 * drawing is drawn (room {@code report.drawing}), how a word, a figure or a tag is written (room
 * {@code report.writing}), files, printers, PDF. Nothing is decided here: every number, verdict and
 * remedy comes from the findings. Read {@link datumpeg.analysis.report.Report} first.
 */
@NullMarked
package datumpeg.analysis.report;

import org.jspecify.annotations.NullMarked;
