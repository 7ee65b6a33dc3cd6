package datumpeg.bridge.record;

import datumpeg.bridge.failure.IntegrityException;
import org.jspecify.annotations.Nullable;

/** What stands in the record cannot be made sense of: a broken page, a row that does not read. */
public final class RecordDamagedException extends IntegrityException {
  private static final long serialVersionUID = 1L;

  public RecordDamagedException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
