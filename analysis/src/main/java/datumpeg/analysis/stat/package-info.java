/**
 * Distributions and tests the checks rest on.
 *
 * <p>Here: probabilities and quantiles. Not here: what is tested (rooms {@code adjust}, {@code
 * conform}, {@code trend}). Read {@link datumpeg.analysis.stat.Normal} first, {@link
 * datumpeg.analysis.stat.StudentizedRange} for the one distribution that is our own integration.
 *
 * <p>Worked numbers: Phi(1) = 0.841345, so a value inside limits of two standard uncertainties
 * either side has probability 2*Phi(2) - 1 = 0.954500; chi-squared with 1 degree of freedom exceeds
 * 3.8415 with probability 0.05; Student's t with 16 degrees of freedom has its 97.5 % quantile at
 * 2.1199; the range of two standard normal values stays under 2.772 with probability 0.95, of nine
 * under 4.387.
 */
@NullMarked
package datumpeg.analysis.stat;

import org.jspecify.annotations.NullMarked;
