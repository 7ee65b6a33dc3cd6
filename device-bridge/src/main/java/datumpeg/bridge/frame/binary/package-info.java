/**
 * Binary frames of one length: cutting a stream into them and reading the number in one.
 *
 * <p>Here: the description of such a frame, its search in a stream, its check sum, its value; pure
 * and total. Not here: which meter sends which frame (room meter). Read {@link
 * datumpeg.bridge.frame.binary.FrameShape} first.
 */
@NullMarked
package datumpeg.bridge.frame.binary;

import org.jspecify.annotations.NullMarked;
