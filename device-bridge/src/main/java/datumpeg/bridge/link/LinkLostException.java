package datumpeg.bridge.link;

import datumpeg.bridge.failure.OuterWorldException;
import org.jspecify.annotations.Nullable;

/**
 * A link that was open is gone: pulled out, switched off, closed. Of a replay: the capture is
 * damaged further on; the cause says where.
 */
public final class LinkLostException extends OuterWorldException {
  private static final long serialVersionUID = 1L;

  private final String address;
  private final long receivedByteCount;

  /**
   * A loss.
   *
   * @param address the link as a person named it
   * @param receivedByteCount how many bytes had come since it was opened
   */
  public LinkLostException(
      String address, long receivedByteCount, String message, @Nullable Throwable cause) {
    super(message, cause);
    this.address = address;
    this.receivedByteCount = receivedByteCount;
  }

  public String address() {
    return address;
  }

  public long receivedByteCount() {
    return receivedByteCount;
  }
}
