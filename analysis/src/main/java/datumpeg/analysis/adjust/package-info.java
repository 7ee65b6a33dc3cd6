/**
 * Least squares: what many readings say together, how certain that is, and which reading disagrees.
 *
 * <p>Here: {@link datumpeg.analysis.adjust.LeastSquares}, the one engine, and the networks that
 * speak its language: {@link datumpeg.analysis.adjust.DistanceNetwork}, {@link
 * datumpeg.analysis.adjust.LineNetwork}, {@link datumpeg.analysis.adjust.LevelNetwork}, {@link
 * datumpeg.analysis.adjust.TiltSession}, and {@link datumpeg.analysis.adjust.BestPlane}. Not here:
 * targets, the plan, limits (rooms {@code measuring}, {@code building}, {@code conform}) and which
 * deviation a check asks for (room {@code reduce}). Read {@link
 * datumpeg.analysis.adjust.Observation} first.
 *
 * <p>Accuracy model: an observation's covariance is its independent variance plus c c' for each
 * error it shares with others. Repeats shrink the independent part only: four readings with u = 1
 * mm alone and c = 1 mm in common have a mean known to sqrt(1/4 + 1) = 1.118 mm, not 0.707 mm.
 *
 * <p>Worked numbers, for six distances of a quadrilateral 12 m × 9 m, each with 1.5 mm (AB 12.003,
 * BC 8.998, CD 11.998, DA 9.004, AC 15.006, BD 14.991 m; computed independently in two other
 * languages):
 *
 * <ul>
 *   <li>adjusted AB = 12.002001 m, residual = adjusted - observed = -0.9988 mm;
 *   <li>degrees of freedom 6 - 5 = 1; v'Pv = 2.77250; exceeded by chance with probability 0.0959;
 *   <li>redundancy of a 12 m side 12^2/(4*15^2) = 0.160, of a 9 m side 0.090, of a diagonal 0.250;
 *       sum 1;
 *   <li>smallest detectable slip of a diagonal 2.8016*1.5/sqrt(0.250) = 8.40 mm;
 *   <li>corner angle at A 89.910111 degrees.
 * </ul>
 *
 * <p>Line: stations read in one run with u each have bays of u*sqrt(2), and neighbouring bays
 * correlate by -0.5. Tilt: r1 = 0.32, r2 = -0.18 degrees on two faces give (r1 - r2)/2 = 0.25 and a
 * zero error of 0.07. Levels: a plane z = 2 mm/m x over 0 and 6 m differs by 12 mm; with a set-up's
 * tilt known to 0.1 mm/m that difference carries 0.6 mm which no number of repeats removes.
 */
@NullMarked
package datumpeg.analysis.adjust;

import org.jspecify.annotations.NullMarked;
