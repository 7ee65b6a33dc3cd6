package datumpeg.analysis.building;

/** A point that the plan does not have. The message says what the plan does have. */
public final class UnknownPointException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  public UnknownPointException(String message) {
    super(message);
  }
}
