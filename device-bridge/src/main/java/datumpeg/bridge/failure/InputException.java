package datumpeg.bridge.failure;

import org.jspecify.annotations.Nullable;

/**
 * What was given is wrong: a file, an option, a name; also a record that is not ours or is newer
 * than this program.
 */
public class InputException extends FailureException {
  private static final long serialVersionUID = 1L;

  public InputException(String message) {
    this(message, null);
  }

  public InputException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }

  @Override
  public final int exitStatus() {
    return 2;
  }
}
