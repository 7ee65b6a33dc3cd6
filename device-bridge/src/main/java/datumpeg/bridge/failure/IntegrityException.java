package datumpeg.bridge.failure;

import org.jspecify.annotations.Nullable;

/** The record does not add up: rows altered, missing, reordered or forked. */
public class IntegrityException extends FailureException {
  private static final long serialVersionUID = 1L;

  public IntegrityException(String message) {
    this(message, null);
  }

  public IntegrityException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }

  @Override
  public final int exitStatus() {
    return 4;
  }
}
