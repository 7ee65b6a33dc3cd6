package datumpeg.analysis.measuring;

/** A text that should name a target and does not. The message says what was expected. */
public final class TargetFormatException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  public TargetFormatException(String message) {
    super(message);
  }
}
