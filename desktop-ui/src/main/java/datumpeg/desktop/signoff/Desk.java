package datumpeg.desktop.signoff;

import java.nio.file.Path;

/**
 * Where a stage is signed off. Each call opens the record, writes, and closes it; it may take long,
 * and is made off the JavaFX thread.
 *
 * <p>Every method may throw {@link datumpeg.bridge.failure.FailureException}, whose message is
 * shown; nothing was stored then.
 */
public interface Desk {
  /** Closes the hold point of a stage. */
  void sign(String job, String stage, String by);

  /** Takes an open item as it is. */
  void accept(String job, String stage, String item, Acceptor acceptor);

  /** Keeps a copy of a photo with a stage. */
  void attach(String job, String stage, String by, Path photo);

  /**
   * By whose word something is accepted.
   *
   * @param reference the engineer's
   */
  record Acceptor(String by, String reference, String why) {}
}
