package datumpeg.bridge.link.ble.bluez;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ble.BleRefusal;
import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.RejectedExecutionException;
import org.freedesktop.dbus.DBusAsyncReply;
import org.freedesktop.dbus.connections.IDisconnectCallback;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.interfaces.DBusInterface;
import org.freedesktop.dbus.interfaces.DBusSigHandler;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.messages.DBusSignal;
import org.freedesktop.dbus.messages.Error;
import org.freedesktop.dbus.types.Variant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A connection of its own to the bus on which BlueZ is. Only signals of the process that owns the
 * name {@code org.bluez} are heard: anybody may send signals that look like them. Thread-safe.
 */
final class BluezBus implements AutoCloseable {
  static final String SERVICE = "org.bluez";

  private static final Logger LOG = LoggerFactory.getLogger(BluezBus.class);
  private static final long LOOK_MILLIS = 5;

  private final DBusConnection connection;
  private final String owner;

  private BluezBus(DBusConnection connection, String owner) {
    this.connection = connection;
    this.owner = owner;
  }

  /**
   * Connects to the bus.
   *
   * @param lost is called if the bus ends the connection
   * @throws LinkUnavailableException if there is no such bus or no BlueZ on it
   */
  static BluezBus open(String busAddress, Runnable lost) {
    DBusConnection connection = connect(busAddress, lost);
    try {
      // A call by name starts the service where the system does that on demand.
      return talk(
          () -> {
            connection.getRemoteObject(SERVICE, "/", ObjectManager.class).GetManagedObjects();
            return new BluezBus(connection, connection.getDBusOwnerName(SERVICE));
          });
    } catch (DBusException | DBusExecutionException absent) {
      connection.disconnect();
      throw BleRefusal.noService(
          "the service is not running; on Linux: sudo systemctl start bluetooth", absent);
    }
  }

  private static DBusConnection connect(String busAddress, Runnable lost) {
    if (isNobodyThere(busAddress)) {
      throw BleRefusal.noService("there is no D-Bus system bus at " + busAddress, null);
    }
    try {
      return DBusConnectionBuilder.forAddress(busAddress)
          .withShared(false)
          .withDisconnectCallback(
              new IDisconnectCallback() {
                @Override
                public void disconnectOnError(IOException cause) {
                  lost.run();
                }
              })
          .build();
    } catch (DBusException | DBusExecutionException | IllegalArgumentException unreachable) {
      throw BleRefusal.noService("there is no D-Bus system bus at " + busAddress, unreachable);
    }
  }

  /** The library would try for ten seconds a socket that is not there, or at which nobody is. */
  private static boolean isNobodyThere(String busAddress) {
    String plain = "unix:path=";
    if (!busAddress.startsWith(plain)) {
      return false;
    }
    Path socket = Path.of(busAddress.substring(plain.length()).split("[,;]", 2)[0]);
    try (SocketChannel trial = SocketChannel.open(StandardProtocolFamily.UNIX)) {
      return !trial.connect(UnixDomainSocketAddress.of(socket));
    } catch (IOException | IllegalArgumentException refused) {
      return true;
    } catch (UnsupportedOperationException unknown) {
      return !Files.exists(socket);
    }
  }

  private interface Talk<T> {
    T say() throws DBusException;
  }

  /** Of a bus that dies meanwhile the library throws what its threads refuse. */
  private static <T> T talk(Talk<T> talk) throws DBusException {
    try {
      return talk.say();
    } catch (RejectedExecutionException died) {
      throw new DBusException("the bus died meanwhile", died);
    }
  }

  boolean isConnected() {
    return connection.isConnected();
  }

  /** All objects of BlueZ as they are now. */
  BluezObjects objects() throws DBusException {
    return talk(() -> new BluezObjects(remote("/", ObjectManager.class).GetManagedObjects()));
  }

  /** The properties of one interface of an object as they are now. */
  Map<String, Variant<?>> properties(String path, String interfaceName) throws DBusException {
    return talk(() -> remote(path, Properties.class).GetAll(interfaceName));
  }

  <T extends DBusInterface> T remote(String path, Class<T> type) throws DBusException {
    return connection.getRemoteObject(owner, path, type);
  }

  /** Hears a kind of signal of BlueZ, in order, on the connection's one signal thread. */
  <T extends DBusSignal> void hear(Class<T> signal, DBusSigHandler<T> handler)
      throws DBusException {
    AutoCloseable unused = // ends with the connection
        talk(() -> connection.addSigHandler(signal, owner, handler));
  }

  /** Hears a kind of signal of the bus itself. */
  <T extends DBusSignal> void hearBus(Class<T> signal, DBusSigHandler<T> handler)
      throws DBusException {
    AutoCloseable unused = // ends with the connection
        talk(() -> connection.addSigHandler(signal, handler));
  }

  /**
   * Calls a method and waits for its end.
   *
   * @throws AnswerMissingException if it did not come in time or the bus died
   * @throws RefusedException if BlueZ refused
   */
  Object call(DBusInterface object, String method, Duration patience, Object... arguments)
      throws DBusException, AnswerMissingException, RefusedException {
    DBusAsyncReply<?> reply = talk(() -> connection.callMethodAsync(object, method, arguments));
    long start = System.nanoTime();
    while (!reply.getCall().hasReply()) {
      if (!connection.isConnected() || System.nanoTime() - start > patience.toNanos()) {
        throw new AnswerMissingException(method);
      }
      pause(LOOK_MILLIS);
    }
    // The library's exception does not keep the error's name, and its text is nothing to go by.
    if (reply.getCall().getReply() instanceof Error error) {
      throw new RefusedException(error);
    }
    // Asking whether there is a reply is what makes the library take it in.
    Object answer = reply.hasReply() ? reply.getReply() : null;
    return answer == null ? "" : answer;
  }

  static void pause(long millis) throws AnswerMissingException {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AnswerMissingException("interrupted");
    }
  }

  @Override
  public void close() {
    try {
      connection.disconnect();
    } catch (DBusExecutionException | RejectedExecutionException alreadyGone) {
      LOG.debug("the bus was gone before it was left", alreadyGone);
    }
  }

  /** BlueZ refused a call. */
  static final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String error;

    RefusedException(Error error) {
      super(error.getException().getMessage());
      this.error = error.getName();
    }

    /** The name of the error on the bus. */
    String error() {
      return error;
    }
  }

  /** BlueZ did not answer in time. */
  static final class AnswerMissingException extends Exception {
    private static final long serialVersionUID = 1L;

    AnswerMissingException(String what) {
      super("no answer in time to " + what);
    }
  }
}
