package datumpeg.bridge.frame.binary;

import datumpeg.bridge.frame.Bytes;
import java.util.Locale;

/**
 * What the last bytes of a frame are worked out from. Which meters use which is common practice, no
 * source.
 */
public enum CheckSum {
  NONE(0),
  /** The sum of all bytes before it, modulo 256. */
  SUM(1),
  /** All bytes before it, exclusive or. */
  XOR(1),
  /**
   * CRC-16 of Modbus, low byte first: polynomial 0x8005 reflected (0xA001), start 0xFFFF (Modbus
   * over serial line, specification and implementation guide V1.02, 2006, 6.2.2).
   */
  CRC16(2);

  private final int byteCount;

  CheckSum(int byteCount) {
    this.byteCount = byteCount;
  }

  /** How profiles name it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** How many bytes at the end of a frame it takes. */
  public int byteCount() {
    return byteCount;
  }

  /** Whether a frame's last bytes are those its other bytes come to. */
  public boolean fits(Bytes frame) {
    int end = frame.length() - byteCount;
    if (end < 1) {
      return false;
    }
    return switch (this) {
      case NONE -> true;
      case SUM -> sum(frame, end) == frame.at(end);
      case XOR -> exclusiveOr(frame, end) == frame.at(end);
      case CRC16 -> crc16(frame, end) == (frame.at(end) | frame.at(end + 1) << 8);
    };
  }

  /** The frame with the bytes this comes to behind it. */
  public Bytes closing(Bytes content) {
    int end = content.length();
    return switch (this) {
      case NONE -> content;
      case SUM -> content.plus(Bytes.of((byte) sum(content, end)));
      case XOR -> content.plus(Bytes.of((byte) exclusiveOr(content, end)));
      case CRC16 -> {
        int crc = crc16(content, end);
        yield content.plus(Bytes.of((byte) crc, (byte) (crc >> 8)));
      }
    };
  }

  private static int sum(Bytes bytes, int end) {
    int sum = 0;
    for (int index = 0; index < end; index++) {
      sum += bytes.at(index);
    }
    return sum & 0xFF;
  }

  private static int exclusiveOr(Bytes bytes, int end) {
    int all = 0;
    for (int index = 0; index < end; index++) {
      all ^= bytes.at(index);
    }
    return all;
  }

  private static int crc16(Bytes bytes, int end) {
    int crc = 0xFFFF;
    for (int index = 0; index < end; index++) {
      crc ^= bytes.at(index);
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : crc >> 1 ^ 0xA001;
      }
    }
    return crc;
  }
}
