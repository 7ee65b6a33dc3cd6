package datumpeg.bridge.frame.binary;

import datumpeg.bridge.frame.Bytes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cuts a stream into frames of one length, wherever the stream happens to be split. Where the start
 * or the check sum does not fit, the first byte is left out and the search goes on behind it. One
 * thread.
 */
public final class FixedFramer {
  private final FrameShape shape;
  private final byte[] window;
  private int length;

  public FixedFramer(FrameShape shape) {
    this.shape = shape;
    this.window = new byte[shape.length()];
  }

  /** Takes the next bytes of the stream; returns the frames they complete, in order. */
  public List<Bytes> accept(Bytes bytes) {
    List<Bytes> frames = new ArrayList<>();
    for (int index = 0; index < bytes.length(); index++) {
      window[length++] = (byte) bytes.at(index);
      if (!startFits()) {
        dropToNextStart();
      } else if (length == window.length) {
        complete(frames);
      }
    }
    return frames;
  }

  private void complete(List<Bytes> frames) {
    Bytes frame = Bytes.of(window);
    if (shape.checkSum().fits(frame)) {
      frames.add(frame);
      length = 0;
    } else {
      dropToNextStart();
    }
  }

  private void dropToNextStart() {
    do {
      System.arraycopy(window, 1, window, 0, --length);
    } while (length > 0 && !startFits());
  }

  private boolean startFits() {
    for (int index = 0; index < Math.min(length, shape.start().length()); index++) {
      if ((window[index] & 0xFF) != shape.start().at(index)) {
        return false;
      }
    }
    return true;
  }

  /** Drops the frame that has not ended, and returns it: the link was lost. */
  public Bytes discardPending() {
    Bytes pending = Bytes.of(window, 0, length);
    Arrays.fill(window, 0, length, (byte) 0);
    length = 0;
    return pending;
  }
}
