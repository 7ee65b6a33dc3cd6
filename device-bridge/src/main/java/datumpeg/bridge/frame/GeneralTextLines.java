package datumpeg.bridge.frame;

import datumpeg.analysis.quantity.Unit;
import java.nio.ByteBuffer;

/**
 * Cuts a stream of bytes into lines and reads each, as {@link TextLineFramer} and {@link
 * GeneralTextLine} do one behind the other. A plain line that lies whole in what came is read in
 * one pass where it lies. One thread.
 */
public final class GeneralTextLines {
  /** Who is given the lines. */
  @FunctionalInterface
  public interface LineTaker {
    /**
     * Takes a line.
     *
     * @param bytes among which it stands, {@code from} (inclusive) to {@code to} (exclusive)
     * @param decoded what it is
     */
    void take(Bytes bytes, int from, int to, Decoded decoded);
  }

  private final TextLineFramer framer;
  private final GeneralTextLine decoding;
  private final PlainLine plain;

  /**
   * A reader of lines of at most this many bytes without their terminator.
   *
   * @param defaultUnit of a number without a unit
   * @throws IllegalArgumentException if the maximum is below 1, or for feet and inches
   */
  public GeneralTextLines(int maximumLineBytes, Unit defaultUnit) {
    this.framer = new TextLineFramer(maximumLineBytes);
    this.decoding = new GeneralTextLine(defaultUnit);
    this.plain = new PlainLine(defaultUnit);
  }

  /** Takes the next bytes of the stream; gives the lines they complete with what each is. */
  public void accept(Bytes bytes, LineTaker lines) {
    ByteBuffer buffer = bytes.buffer();
    int start = 0;
    while (start < bytes.length()) {
      int other = framer.isBetweenLines() ? acceptPlain(bytes, buffer, start, lines) : start;
      start =
          framer.acceptLine(
              bytes, other, line -> lines.take(line, 0, line.length(), decoding.decode(line)));
    }
  }

  /** Takes plain lines one behind the other; returns where the first other one begins. */
  private int acceptPlain(Bytes bytes, ByteBuffer buffer, int from, LineTaker lines) {
    int start = from;
    while ((plain.readAlike(buffer, start) || plain.readAnew(buffer, start))
        && isWhole(plain.shape())) {
      int end = start + plain.shape().lineEnd();
      lines.take(bytes, start, end, plain.measured(bytes, start));
      start += plain.shape().next();
    }
    return start;
  }

  private boolean isWhole(PlainShape shape) {
    return shape.isTerminated() && shape.lineEnd() <= framer.maximumLineBytes();
  }

  /** Drops the line that has not ended, and returns it: the link was lost. */
  public Bytes discardPending() {
    return framer.discardPending();
  }

  /** How many lines were dropped because they were too long. */
  public long overflowCount() {
    return framer.overflowCount();
  }
}
