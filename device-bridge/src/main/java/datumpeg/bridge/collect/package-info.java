/**
 * The running session: values come in from links, captures and the keyboard, are put to their
 * targets, and are handed to the record one by one.
 *
 * <p>{@link datumpeg.bridge.collect.Guide} is guided measuring as a state machine without screen,
 * link or clock. In: {@code value}, {@code late}, and the actions {@code accept}, {@code choose},
 * {@code again}, {@code skip}, {@code back}, {@code undo}. Out: {@link
 * datumpeg.bridge.collect.GuideState} (what is asked for and expected, how much is left, the last
 * reading, the held question) and {@link datumpeg.bridge.collect.SessionWatcher}. A terminal is one
 * face of it; a window drives the same methods from its own thread. {@link
 * datumpeg.bridge.collect.LiveSession} feeds it from links and lines and keeps the capture; a
 * replay goes by the acts that the guide told. {@link datumpeg.bridge.collect.LiveMeasuring} opens
 * what a session needs and closes it, for the terminal and for the window alike.
 *
 * <p>A value is acknowledged only after its commit. Where the record gives way, readings wait in
 * {@link datumpeg.bridge.collect.ReadingStore}, of stated size, and nobody is told that they are
 * recorded. Live measuring and replaying a capture store through the same {@link
 * datumpeg.bridge.collect.Collector}.
 *
 * <p>Here: assigning, holding, accepting, undoing. Not here: bytes (rooms link, frame, meter),
 * storage (room record), printing (room cli). Read {@link datumpeg.bridge.collect.Guide} first.
 */
@NullMarked
package datumpeg.bridge.collect;

import org.jspecify.annotations.NullMarked;
