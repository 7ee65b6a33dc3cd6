package datumpeg.bridge.link.replay;

import org.jspecify.annotations.Nullable;

/** What is wrong with one line; the reader of the capture says of which file and line. */
final class CaptureDamage extends Exception {
  private static final long serialVersionUID = 1L;

  CaptureDamage(String message) {
    this(message, null);
  }

  CaptureDamage(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
