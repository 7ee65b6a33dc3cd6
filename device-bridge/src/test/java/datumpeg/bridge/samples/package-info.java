/**
 * Writes the sample readings: from sites whose truth is invented, through the errors of crews and
 * meters, to the bytes and tables that the program takes in.
 *
 * <p>Here: the two invented jobs and the files made of them. Not here: how the program reads them.
 * Read {@link datumpeg.bridge.samples.SampleReadings} first.
 */
@NullMarked
package datumpeg.bridge.samples;

import org.jspecify.annotations.NullMarked;
