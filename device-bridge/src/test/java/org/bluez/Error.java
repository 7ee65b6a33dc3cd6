package org.bluez;

import org.freedesktop.dbus.exceptions.DBusExecutionException;

/** The errors the peer answers with: dbus-java names an error on the bus after its class. */
@SuppressWarnings("JavaLangClash") // the bus calls it so
public final class Error {
  private Error() {}

  /** The adapter is off. */
  public static final class NotReady extends DBusExecutionException {
    private static final long serialVersionUID = 1L;

    public NotReady(String message) {
      super(message);
    }
  }

  /** For any reason. */
  public static final class Failed extends DBusExecutionException {
    private static final long serialVersionUID = 1L;

    public Failed(String message) {
      super(message);
    }
  }

  /** The characteristic does not allow it. */
  public static final class NotPermitted extends DBusExecutionException {
    private static final long serialVersionUID = 1L;

    public NotPermitted(String message) {
      super(message);
    }
  }

  /** Pairing was not agreed upon. */
  public static final class AuthenticationRejected extends DBusExecutionException {
    private static final long serialVersionUID = 1L;

    public AuthenticationRejected(String message) {
      super(message);
    }
  }
}
