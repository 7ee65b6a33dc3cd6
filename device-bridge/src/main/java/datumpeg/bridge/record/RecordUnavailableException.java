package datumpeg.bridge.record;

import datumpeg.bridge.failure.OuterWorldException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** The record could not be read or written just now; what it holds is unharmed. */
public final class RecordUnavailableException extends OuterWorldException {
  private static final long serialVersionUID = 1L;

  /** What stood in the way. */
  public enum Reason {
    /** Another process held it for longer than we wait. */
    LOCKED,
    /** The file, or its folder, may not be written. */
    READ_ONLY,
    /** No room is left on the disk. */
    FULL,
    /** The file or its folder cannot be opened. */
    NOT_REACHABLE,
    /** The disk answered with an error. */
    DISK_ERROR
  }

  private final Reason reason;
  private final String file;

  public RecordUnavailableException(
      Reason reason, Path file, String message, @Nullable Throwable cause) {
    super(message, cause);
    this.reason = reason;
    this.file = file.toString();
  }

  public Reason reason() {
    return reason;
  }

  public Path file() {
    return Path.of(file);
  }
}
