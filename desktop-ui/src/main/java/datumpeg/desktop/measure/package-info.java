/**
 * The screen on which a stage is measured, and one target is watched live.
 *
 * <p>Here: choosing what to measure with which meters, the session as it stands, its drawing, its
 * keys and tones. Not here: what is asked for, held and stored (room {@code
 * datumpeg.bridge.collect}, which a terminal drives just so). Read {@link
 * datumpeg.desktop.measure.MeasureViewModel} first, then {@link
 * datumpeg.desktop.measure.SessionShot}.
 */
@NullMarked
package datumpeg.desktop.measure;

import org.jspecify.annotations.NullMarked;
