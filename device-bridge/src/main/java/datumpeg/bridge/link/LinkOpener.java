package datumpeg.bridge.link;

/** Opens one link, each time afresh. Thread-safe. */
@FunctionalInterface
public interface LinkOpener {

  /**
   * Opens the link and begins to read.
   *
   * @param listener may hear of bytes, and of a loss, before this returns
   * @throws LinkUnavailableException if it cannot be opened now
   */
  Link open(LinkListener listener);
}
