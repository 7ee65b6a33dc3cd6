package datumpeg.bridge.record;

import datumpeg.bridge.failure.InputException;

/** A live record may not lie where it was asked for: a network folder, a synced folder. */
public final class UnsuitablePlaceException extends InputException {
  private static final long serialVersionUID = 1L;

  public UnsuitablePlaceException(String message) {
    super(message);
  }
}
