package datumpeg.bridge.link.ble.peer;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.freedesktop.dbus.errors.PropertyReadOnly;
import org.freedesktop.dbus.errors.UnknownProperty;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;

/** An object on the bus with its properties, by interface. Thread-safe. */
public abstract class PeerObject implements Properties {
  final BluezPeer peer;
  private final String path;
  private final Map<String, Map<String, Variant<?>>> interfaces = new LinkedHashMap<>();

  PeerObject(BluezPeer peer, String path) {
    this.peer = peer;
    this.path = path;
  }

  @Override
  public final String getObjectPath() {
    return path;
  }

  /** Gives a property its first value, telling nobody. */
  final synchronized void begin(String interfaceName, String property, Variant<?> value) {
    interfaces.computeIfAbsent(interfaceName, name -> new LinkedHashMap<>()).put(property, value);
  }

  /** Changes a property and tells the bus. */
  final void change(String interfaceName, String property, Variant<?> value) {
    begin(interfaceName, property, value);
    peer.changed(path, interfaceName, property, value);
  }

  /** All interfaces with their properties, as they are now. */
  final synchronized Map<String, Map<String, Variant<?>>> interfaces() {
    Map<String, Map<String, Variant<?>>> copy = new LinkedHashMap<>();
    interfaces.forEach((name, properties) -> copy.put(name, new LinkedHashMap<>(properties)));
    return copy;
  }

  final synchronized void forget(String interfaceName) {
    interfaces.remove(interfaceName);
  }

  final synchronized boolean isTrue(String interfaceName, String property) {
    return Get(interfaceName, property) instanceof Variant<?> variant
        && Boolean.TRUE.equals(variant.getValue());
  }

  // The bus decides what comes back: the caller's type is a wish of the library's signature.
  @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
  @Override
  public synchronized <A> A Get(String interfaceName, String property) {
    Map<String, Variant<?>> properties = interfaces.getOrDefault(interfaceName, Map.of());
    Variant<?> value = properties.get(property);
    if (value == null) {
      throw new UnknownProperty("no " + property);
    }
    return (A) value;
  }

  @Override
  public <A> void Set(String interfaceName, String property, A value) {
    throw new PropertyReadOnly(property + " is not to be set");
  }

  @Override
  public synchronized Map<String, Variant<?>> GetAll(String interfaceName) {
    return new LinkedHashMap<>(interfaces.getOrDefault(interfaceName, Map.of()));
  }

  static Variant<List<String>> words(List<String> words) {
    return new Variant<>(words, "as");
  }
}
