/**
 * How a word, a figure and a tag are written in a document.
 *
 * <p>Here: markup with everything escaped, lengths in the reader's units, checks, targets and
 * verdicts in plain words. Not here: what a document says. Read {@link
 * datumpeg.analysis.report.writing.Markup} first.
 */
@NullMarked
package datumpeg.analysis.report.writing;

import org.jspecify.annotations.NullMarked;
