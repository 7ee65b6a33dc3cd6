package datumpeg.bridge.failure;

import org.jspecify.annotations.Nullable;

/** A port, a disk or a database gave way: missing, busy, locked, read-only, full. */
public class OuterWorldException extends FailureException {
  private static final long serialVersionUID = 1L;

  public OuterWorldException(String message) {
    this(message, null);
  }

  public OuterWorldException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }

  @Override
  public final int exitStatus() {
    return 3;
  }
}
