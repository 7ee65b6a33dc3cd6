package datumpeg.bridge.link;

import java.time.Duration;

/**
 * Hears a link that comes back by itself; one call at a time, on threads of the link. Other than of
 * a plain link, bytes may come again after {@link #lost}, behind {@link #returned}.
 */
public interface ReturningLinkListener extends LinkListener {

  /** The link could not be opened and is tried again; told when the reason changes. */
  void away(LinkUnavailableException why);

  /** The link is there again. */
  void returned();

  /** Nothing came for so long, of a meter that need not send by itself; told once each time. */
  void silent(Duration since);
}
