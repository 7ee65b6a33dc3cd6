package datumpeg.bridge.link;

import datumpeg.bridge.failure.OuterWorldException;

/** A link that was open is gone: pulled out, switched off, closed. */
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
  public LinkLostException(String address, long receivedByteCount, String message) {
    super(message);
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
