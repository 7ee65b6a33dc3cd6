/**
 * The table of permitted deviations with their sources, kept as data.
 *
 * <p>No row stands in for a code: each is an arithmetic rule that somebody remembers or another
 * document quotes, marked as such, and printed with "verify against your copy" until it is compared
 * with the document. A job names a row by its id or brings its own limit.
 *
 * <p>Here: the rows and how a rule is written. Not here: the arithmetic itself (room conform of the
 * analysis), which job uses which limit. Read {@link datumpeg.bridge.limits.LimitsTable} first.
 */
@NullMarked
package datumpeg.bridge.limits;

import org.jspecify.annotations.NullMarked;
