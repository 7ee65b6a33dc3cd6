package datumpeg.bridge.failure;

import org.jspecify.annotations.Nullable;

/**
 * A failure a person can act on. The message is one or more plain sentences: what was attempted, on
 * what, what was found, what was expected.
 */
public abstract class FailureException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  protected FailureException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }

  /** The process exit status this failure stands for. */
  public abstract int exitStatus();
}
