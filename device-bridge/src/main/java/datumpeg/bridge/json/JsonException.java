package datumpeg.bridge.json;

import datumpeg.bridge.failure.InputException;
import org.jspecify.annotations.Nullable;

/** A text is not JSON, or a JSON value is not of the shape that was expected. */
public final class JsonException extends InputException {
  private static final long serialVersionUID = 1L;

  public JsonException(String message) {
    super(message);
  }

  public JsonException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
