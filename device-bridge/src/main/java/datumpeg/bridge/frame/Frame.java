package datumpeg.bridge.frame;

/**
 * One complete message of a meter.
 *
 * @param bytes as received, without their terminator, never altered
 */
public record Frame(Bytes bytes) {

  /** The frame of one line given without its terminator. */
  public static Frame ofLine(Bytes bytes) {
    return new Frame(bytes);
  }

  /** The bytes as {@link LineText} reads them, read anew at each call. */
  public String text() {
    return LineText.of(bytes);
  }
}
