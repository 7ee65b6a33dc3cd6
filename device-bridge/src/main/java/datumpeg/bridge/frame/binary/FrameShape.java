package datumpeg.bridge.frame.binary;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.gatt.PresentationFormat;

/**
 * A frame of one length with one number in it.
 *
 * @param start the bytes every frame begins with, 1 to 8
 * @param length of the whole frame in bytes, start and check sum among them
 * @param checkSum its last bytes
 * @param offset where the number begins, counted from the frame's first byte
 * @param order of the number's bytes
 * @param value how the number is read, and its unit
 */
public record FrameShape(
    Bytes start,
    int length,
    CheckSum checkSum,
    int offset,
    ByteOrder order,
    PresentationFormat value) {
  public static final int LONGEST_START = 8;
  public static final int LONGEST_FRAME = 256;

  public FrameShape {
    if (start.isEmpty() || start.length() > LONGEST_START) {
      throw new IllegalArgumentException(
          "a frame begins with 1 to 8 known bytes, found " + start.length());
    }
    int size = value.format().byteCount();
    if (size == 0) {
      throw new IllegalArgumentException(
          "a frame of one length holds numbers, not " + value.format().word());
    }
    if (length > LONGEST_FRAME || offset < 0 || offset + size + checkSum.byteCount() > length) {
      throw new IllegalArgumentException(
          "a number of %d bytes at offset %d and a check sum of %d do not fit into %d bytes (at most 256)"
              .formatted(size, offset, checkSum.byteCount(), length));
    }
    if (start.length() > length) {
      throw new IllegalArgumentException("the start is longer than the frame");
    }
  }
}
