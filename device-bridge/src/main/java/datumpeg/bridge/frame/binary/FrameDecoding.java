package datumpeg.bridge.frame.binary;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.gatt.GattDecoding;

/** Reads the number of a frame of one length. Total. Immutable. */
public final class FrameDecoding {
  private final FrameShape shape;
  private final GattDecoding number;

  public FrameDecoding(FrameShape shape) {
    this.shape = shape;
    this.number = new GattDecoding(shape.value());
  }

  /** What a frame's number is; of bytes that are too short a damaged frame. */
  public Decoded decode(Bytes frame) {
    int size = shape.value().format().byteCount();
    int end = Math.min(frame.length(), shape.offset() + size);
    Bytes field = frame.slice(Math.min(shape.offset(), end), end);
    return number.decode(shape.order() == ByteOrder.BIG ? field.reversed() : field);
  }
}
