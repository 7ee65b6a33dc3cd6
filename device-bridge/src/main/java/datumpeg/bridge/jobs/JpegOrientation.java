package datumpeg.bridge.jobs;

import java.awt.geom.AffineTransform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How a camera was held: JEITA CP-3451 (Exif 2.2), 4.6.4, tag 274, within the application segment
 * of a JPEG file (ISO/IEC 10918-1, B.2.4.6); from memory, held by the test to pictures of each
 * kind. Immutable.
 *
 * @param code 1, upright, to 8
 */
record JpegOrientation(int code) {
  static final JpegOrientation UPRIGHT = new JpegOrientation(1);

  private static final int APPLICATION_1 = 0xE1;
  private static final int START_OF_SCAN = 0xDA;
  private static final int EXIF_HEADER_BYTES = 6;
  private static final int ENTRY_BYTES = 12;
  private static final int ORIENTATION = 274;

  JpegOrientation {
    if (code < 1 || code > 8) {
      throw new IllegalArgumentException("orientation " + code + "; expected 1 to 8");
    }
  }

  /** What a file says; upright if it says nothing that makes sense. */
  static JpegOrientation of(byte[] file) {
    try {
      ByteBuffer bytes = ByteBuffer.wrap(file);
      if (bytes.getShort() != (short) 0xFFD8) {
        return UPRIGHT;
      }
      while (bytes.remaining() > 4 && (bytes.get() & 0xFF) == 0xFF) {
        int marker = bytes.get() & 0xFF;
        int length = bytes.getShort() & 0xFFFF;
        if (marker == APPLICATION_1 && bytes.getInt(bytes.position()) == 0x45786966) { // Exif
          return of(bytes.slice(bytes.position() + EXIF_HEADER_BYTES, length - 8));
        }
        if (marker == START_OF_SCAN) {
          return UPRIGHT;
        }
        bytes.position(bytes.position() + length - 2);
      }
    } catch (RuntimeException e) {
      // A damaged header: the picture is shown as its pixels stand.
    }
    return UPRIGHT;
  }

  /** From the TIFF header within: byte order, then the first directory's entries. */
  private static JpegOrientation of(ByteBuffer tiff) {
    tiff.order(tiff.getShort(0) == 0x4949 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    int directory = tiff.getInt(4);
    int entries = tiff.getShort(directory) & 0xFFFF;
    for (int i = 0; i < entries; i++) {
      int at = directory + 2 + i * ENTRY_BYTES;
      if ((tiff.getShort(at) & 0xFFFF) == ORIENTATION) {
        return new JpegOrientation(tiff.getShort(at + 8) & 0xFFFF);
      }
    }
    return UPRIGHT;
  }

  /** Whether width and height change places. */
  boolean turned() {
    return code > 4;
  }

  /** Brings a picture of that size upright, its corner at the origin. */
  AffineTransform upright(int wide, int high) {
    return switch (code) {
      case 2 -> new AffineTransform(-1, 0, 0, 1, wide, 0);
      case 3 -> new AffineTransform(-1, 0, 0, -1, wide, high);
      case 4 -> new AffineTransform(1, 0, 0, -1, 0, high);
      case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
      case 6 -> new AffineTransform(0, 1, -1, 0, high, 0);
      case 7 -> new AffineTransform(0, -1, -1, 0, high, wide);
      case 8 -> new AffineTransform(0, -1, 1, 0, 0, wide);
      default -> new AffineTransform();
    };
  }
}
