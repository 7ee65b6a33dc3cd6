package datumpeg.bridge.frame;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

/**
 * Cuts a stream of bytes into lines, wherever the stream happens to be split.
 *
 * <p>A line ends at CR, at LF or at both; empty lines are not frames. A line longer than the
 * maximum is dropped up to its end and counted. What has no terminator yet is pending and never a
 * frame. One thread.
 */
public final class TextLineFramer {
  /**
   * Long enough for any meter's line; short enough that noise without a terminator costs nothing.
   */
  public static final int DEFAULT_MAXIMUM_LINE_BYTES = 1024;

  private final byte[] line;
  private int length;
  private boolean overflowing;
  private long overflowCount;

  public TextLineFramer() {
    this(DEFAULT_MAXIMUM_LINE_BYTES);
  }

  /**
   * A framer of lines of at most this many bytes without their terminator.
   *
   * @throws IllegalArgumentException if the maximum is below 1
   */
  public TextLineFramer(int maximumLineBytes) {
    if (maximumLineBytes < 1) {
      throw new IllegalArgumentException("a line needs at least 1 byte, given " + maximumLineBytes);
    }
    this.line = new byte[maximumLineBytes];
  }

  /** Takes the next bytes of the stream; returns the lines they complete, in order. */
  public List<Bytes> accept(Bytes bytes) {
    List<Bytes> lines = new ArrayList<>();
    accept(bytes, lines::add);
    return lines;
  }

  /** Takes the next bytes of the stream; gives the lines they complete, in order. */
  public void accept(Bytes bytes, Consumer<Bytes> lines) {
    int start = 0;
    while (start < bytes.length()) {
      start = acceptLine(bytes, start, lines);
    }
  }

  /**
   * Takes the next bytes from an index up to the first end of a line; gives the line that they
   * complete, if any.
   *
   * @return the index of the first byte not taken
   */
  int acceptLine(Bytes bytes, int from, Consumer<Bytes> lines) {
    int end = bytes.lineEnd(from);
    if (end == bytes.length()) {
      keep(bytes, from, end);
      return end;
    }
    if (end > from || !isBetweenLines()) {
      endLine(bytes, from, end, lines);
    }
    return end + 1;
  }

  /** Most lines lie whole in what came, and are cut out of it. */
  private void endLine(Bytes bytes, int from, int to, Consumer<Bytes> lines) {
    if (isBetweenLines() && to - from <= line.length) {
      lines.accept(bytes.slice(from, to));
      return;
    }
    keep(bytes, from, to);
    endKept(lines);
  }

  /** Whether the next byte is the first of a line. */
  boolean isBetweenLines() {
    return length == 0 && !overflowing;
  }

  int maximumLineBytes() {
    return line.length;
  }

  private void keep(Bytes bytes, int from, int to) {
    for (int index = from; index < to; index++) {
      append((byte) bytes.at(index));
    }
  }

  private void append(byte value) {
    if (overflowing) {
      return;
    }
    if (length == line.length) {
      overflowing = true;
      overflowCount++;
      length = 0;
      return;
    }
    line[length++] = value;
  }

  private void endKept(Consumer<Bytes> lines) {
    if (length > 0) {
      lines.accept(Bytes.of(line, 0, length));
    }
    length = 0;
    overflowing = false;
  }

  /** The bytes of the line that has not ended. */
  public Bytes pending() {
    return Bytes.of(line, 0, length);
  }

  /** Drops the line that has not ended, and returns it: the link was lost. */
  public Bytes discardPending() {
    Bytes pending = pending();
    Arrays.fill(line, 0, length, (byte) 0);
    length = 0;
    overflowing = false;
    return pending;
  }

  /** How many lines were dropped because they were too long. */
  public long overflowCount() {
    return overflowCount;
  }
}
