package datumpeg.bridge.record;

import datumpeg.bridge.failure.InputException;

/** The file is not a record this version can open; nothing in it was changed. */
public final class NotOurRecordException extends InputException {
  private static final long serialVersionUID = 1L;

  /** Why not. */
  public enum Found {
    NOTHING,
    NOT_A_DATABASE,
    ANOTHER_APPLICATION,
    NEWER_VERSION
  }

  private final Found found;

  public NotOurRecordException(Found found, String message) {
    super(message);
    this.found = found;
  }

  public Found found() {
    return found;
  }
}
