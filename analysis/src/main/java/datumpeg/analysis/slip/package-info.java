/**
 * Slips: when readings do not fit together, which mistake of a person would explain them.
 *
 * <p>Here: the slips people make ({@link datumpeg.analysis.slip.Slip}), what each would have made
 * of the readings, and the search ({@link datumpeg.analysis.slip.SlipSearch}) that adjusts a
 * network again as if each had happened and ranks what explains the data. Not here: which network a
 * check adjusts, and the notes about it. A result is a list of suspicions; no reading is dropped or
 * corrected. Read {@link datumpeg.analysis.slip.SlipNetwork} first.
 *
 * <p>Criterion. The network is doubted when its global test fails at 5 %. A slip explains it when
 * (1) the changed readings pass the global test, at 1 % so that a true explanation is seldom thrown
 * away, and (2) v'Pv drops by more than chance allows: without any slip the drop of a change of
 * fixed size is at most a chi-squared variable with one degree of freedom, that of an estimated
 * offset is one; its probability times the number of distinguishable slips of that family must stay
 * under 5 % (W. Baarda, A testing procedure for use in geodetic networks, 1968; the correction is
 * Bonferroni's). Order: v'Pv plus 3.841 for each estimated offset, so that an offset of free size
 * beats a fixed one only when the likelihood ratio test at 5 % prefers it (S. S. Wilks, The
 * large-sample distribution of the likelihood ratio, Annals of Mathematical Statistics 9, 1938).
 * Slips that lie within 3.841 of each other cannot be told apart; among those alone the more usual
 * one stands first. Sources recalled, not looked up; tests hold shares and levels by simulation.
 *
 * <p>Two slips at once are looked for when no single one explains the readings: of two changes the
 * drop is at most a chi-squared variable with two degrees of freedom, each must bring 10.83 by
 * itself, and two degrees of freedom must be left to check them by ({@link
 * datumpeg.analysis.slip.SlipSearch}).
 *
 * <p>Worked: six distances of a quadrilateral 12 m × 9 m, 1.5 mm each, of which the diagonal AC
 * reads 14.006 instead of 15.006 m. One degree of freedom: a slip is seen, and an offset of some
 * size in any of the six explains it; a whole metre only in AC or BD. Reading AC once more decides.
 */
@NullMarked
package datumpeg.analysis.slip;

import org.jspecify.annotations.NullMarked;
