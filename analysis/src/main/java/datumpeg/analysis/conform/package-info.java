/**
 * Limits with their source, the decision rule, and the outcome of a check.
 *
 * <p>A conformance probability is Φ((T_U − y)/u) − Φ((T_L − y)/u) (JCGM 106:2012, 7.3 and 7.4). An
 * outcome is conforming when that is at least the accept probability, nonconforming when at most
 * the reject probability, undecided between. Worked: y = 8 mm, u = 1.5 mm, limits ±10 mm give
 * 0.908789.
 *
 * <p>A job may decide by guard bands instead ({@link datumpeg.analysis.conform.GuardBand}). A
 * spread or a maximum of several values has bounds of its own ({@link
 * datumpeg.analysis.conform.Conformance}); all outcomes of a stage together are bounded by {@link
 * datumpeg.analysis.conform.JointConformance}.
 *
 * <p>Here: rules of permitted deviations, probabilities, verdicts, outcomes. Not here: how a
 * measured value came about, and what to do about it. Read {@link
 * datumpeg.analysis.conform.Outcome} first.
 */
@NullMarked
package datumpeg.analysis.conform;

import org.jspecify.annotations.NullMarked;
