/**
 * Sites, crews and meters whose truth is known, and a seed: for tests, samples and benchmarks.
 *
 * <p>A site knows where every point truly is; a meter has the errors it brings to one session; a
 * crew hits an ill-defined corner now here, now there, or marks it once a little beside. A session
 * turns all three into readings, the same ones for the same seed on every JDK.
 *
 * <p>Worked: a column 3.6 m high that leans 21 mm across, without bow, stands at atan(21/3600) =
 * 0.334222 deg; a meter with a zero error of 0.1 deg reads +0.434222 deg on face 1 and −0.234222
 * deg on face 2, whose half difference is the lean again.
 *
 * <p>Here: truth and the errors on the way to a reading. Not here: bytes of meters, files, and what
 * follows from readings. Read {@link datumpeg.analysis.simulate.SimulatedSession} first.
 */
@NullMarked
package datumpeg.analysis.simulate;

import org.jspecify.annotations.NullMarked;
