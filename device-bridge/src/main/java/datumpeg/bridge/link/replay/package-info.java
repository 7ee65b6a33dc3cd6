/**
 * Captures: the raw bytes of links with their times and the acts of the person, one JSON object a
 * line, written while measuring and replayed afterwards.
 *
 * <p>Here: reading and writing captures and the link that feeds one back. Not here: what a session
 * does with the bytes and acts (room collect), composing invented captures (room emulate). Read
 * {@link datumpeg.bridge.link.replay.CaptureEntry} first.
 */
@NullMarked
package datumpeg.bridge.link.replay;

import org.jspecify.annotations.NullMarked;
