package datumpeg.bridge.link;

import datumpeg.bridge.failure.OuterWorldException;
import org.jspecify.annotations.Nullable;

/** A link could not be opened: not there, busy, not permitted. */
public final class LinkUnavailableException extends OuterWorldException {
  private static final long serialVersionUID = 1L;

  /** What stood in the way. */
  public enum Obstacle {
    MISSING,
    BUSY,
    NOT_PERMITTED,
    /** It opened and could not be set up, or the machine refused for another reason. */
    REFUSED
  }

  private final Obstacle obstacle;

  public LinkUnavailableException(Obstacle obstacle, String message) {
    this(obstacle, message, null);
  }

  public LinkUnavailableException(Obstacle obstacle, String message, @Nullable Throwable cause) {
    super(message, cause);
    this.obstacle = obstacle;
  }

  public Obstacle obstacle() {
    return obstacle;
  }
}
