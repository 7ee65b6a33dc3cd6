/**
 * A value with its standard uncertainty, and how both travel through a formula.
 *
 * <p>Here: {@link datumpeg.analysis.uncertainty.Estimate}, one value; {@link
 * datumpeg.analysis.uncertainty.JointEstimate}, several values with their covariance; {@link
 * datumpeg.analysis.uncertainty.Linearised}, a quantity computed from such values, which keeps
 * every correlation. Not here: where a meter's accuracy comes from (room {@code measuring}), least
 * squares (room {@code adjust}), limits (room {@code conform}). Read {@code Estimate} first.
 *
 * <p>Source of all formulas: JCGM 100:2008, Evaluation of measurement data. Worked numbers:
 *
 * <ul>
 *   <li>independent parts, clause 5.1.2 eq. (10): 3 mm and 4 mm combine to 5 mm;
 *   <li>expanded uncertainty, clause 6.2.1 eq. (18): u = 1.2 mm, k = 2 gives U = 2.4 mm;
 *   <li>correlated inputs, clause 5.2.2 eq. (13): y = a - b with u(a) = u(b) = 2 mm and correlation
 *       0.75 gives u(y)^2 = 4 + 4 - 2*3 = 2 mm^2, u(y) = 1.414 mm;
 *   <li>effective degrees of freedom, clause G.4.1 eq. (G.2b): parts 0.25, 0.57, 0.82 with 9, 4, 14
 *       degrees of freedom give 18.9987 (the example of G.4.1 rounds to 19).
 * </ul>
 */
@NullMarked
package datumpeg.analysis.uncertainty;

import org.jspecify.annotations.NullMarked;
