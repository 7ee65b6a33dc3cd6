/**
 * Values to the bytes a meter would send: for samples, the demo, tests and benchmarks.
 *
 * <p>Here: meters that speak the general text line in several dialects, and whole captures composed
 * from given readings; the same seed gives the same bytes. Not here: sites and errors of
 * measurement (analysis, room simulate). Read {@link datumpeg.bridge.emulate.EmulatedMeter} first.
 */
@NullMarked
package datumpeg.bridge.emulate;

import org.jspecify.annotations.NullMarked;
