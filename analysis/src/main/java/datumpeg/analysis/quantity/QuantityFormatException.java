package datumpeg.analysis.quantity;

/** A text that should be a length or an angle and is not. The message says what was expected. */
public final class QuantityFormatException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  public QuantityFormatException(String message) {
    super(message);
  }
}
