package datumpeg.bridge.frame;

/**
 * One complete message of a meter: the bytes as received, without their terminator, and as text.
 *
 * @param bytes as received, never altered
 * @param text the bytes as {@link LineText} reads them
 */
public record Frame(Bytes bytes, String text) {

  /** The frame of one line given without its terminator. */
  public static Frame ofLine(Bytes bytes) {
    return new Frame(bytes, LineText.of(bytes));
  }
}
