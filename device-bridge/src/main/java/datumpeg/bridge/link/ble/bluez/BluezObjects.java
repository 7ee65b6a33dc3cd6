package datumpeg.bridge.link.ble.bluez;

import datumpeg.bridge.link.ble.BleCharacteristic.Use;
import datumpeg.bridge.link.ble.BleSighting;
import datumpeg.bridge.link.ble.GattNames;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;
import org.jspecify.annotations.Nullable;

/**
 * The objects of BlueZ at one moment, by path. Looked up afresh after every loss: a path may stay
 * while the object behind it changed. Immutable.
 */
final class BluezObjects {
  static final String ADAPTER = "org.bluez.Adapter1";
  static final String DEVICE = "org.bluez.Device1";
  static final String BATTERY = "org.bluez.Battery1";
  static final String SERVICE = "org.bluez.GattService1";
  static final String CHARACTERISTIC = "org.bluez.GattCharacteristic1";
  static final String DESCRIPTOR = "org.bluez.GattDescriptor1";

  private final Map<String, Map<String, Map<String, Variant<?>>>> objects = new TreeMap<>();

  BluezObjects(Map<DBusPath, Map<String, Map<String, Variant<?>>>> managed) {
    managed.forEach((path, interfaces) -> objects.put(path.getPath(), interfaces));
  }

  /**
   * A radio of this machine.
   *
   * @param name such as {@code hci0}
   */
  record Adapter(String path, String name, boolean isPowered) {}

  /** A meter or another device that BlueZ knows. */
  record Device(String path, BleSighting sighting, boolean isConnected, boolean isResolved) {}

  /**
   * A characteristic as it is listed.
   *
   * @param descriptorPath of its presentation format; null without one
   */
  record Listed(
      String path, String service, String uuid, Set<Use> uses, @Nullable String descriptorPath) {}

  List<Adapter> adapters() {
    List<Adapter> adapters = new ArrayList<>();
    having(ADAPTER)
        .forEach(
            (path, properties) ->
                adapters.add(
                    new Adapter(
                        path,
                        path.substring(path.lastIndexOf('/') + 1),
                        isTrue(properties, "Powered"))));
    return adapters;
  }

  List<Device> devices(Adapter adapter) {
    List<Device> devices = new ArrayList<>();
    having(DEVICE)
        .forEach(
            (path, properties) -> {
              if (path.startsWith(adapter.path() + "/")) {
                devices.add(device(path, properties));
              }
            });
    devices.sort(Comparator.comparing(device -> device.sighting().address()));
    return devices;
  }

  private static Device device(String path, Map<String, Variant<?>> properties) {
    String address = text(properties, "Address").toUpperCase(Locale.ROOT);
    int strength = value(properties, "RSSI") instanceof Number number ? number.intValue() : 0;
    return new Device(
        path,
        BleSighting.of(address, text(properties, "Alias"), strength),
        isTrue(properties, "Connected"),
        isTrue(properties, "ServicesResolved"));
  }

  /** The device of this address, connected or not. */
  Optional<Device> device(Adapter adapter, String address) {
    return devices(adapter).stream()
        .filter(device -> device.sighting().address().equals(address))
        .findFirst();
  }

  /**
   * The characteristics of a device in the order of their paths, which is that of their handles.
   */
  List<Listed> characteristics(String devicePath) {
    Map<String, Map<String, Variant<?>>> descriptors = having(DESCRIPTOR);
    List<Listed> listed = new ArrayList<>();
    having(CHARACTERISTIC)
        .forEach(
            (path, properties) -> {
              String uuid = text(properties, "UUID").toLowerCase(Locale.ROOT);
              String service = pathOf(properties, "Service");
              if (path.startsWith(devicePath + "/") && GattNames.isUuid(uuid)) {
                listed.add(
                    new Listed(
                        path,
                        text(having(SERVICE).getOrDefault(service, Map.of()), "UUID")
                            .toLowerCase(Locale.ROOT),
                        uuid,
                        uses(properties),
                        presentation(path, descriptors)));
              }
            });
    return listed;
  }

  private static @Nullable String presentation(
      String characteristic, Map<String, Map<String, Variant<?>>> descriptors) {
    return descriptors.entrySet().stream()
        .filter(one -> one.getKey().startsWith(characteristic + "/"))
        .filter(
            one ->
                GattNames.PRESENTATION_FORMAT.equals(
                    text(one.getValue(), "UUID").toLowerCase(Locale.ROOT)))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(null);
  }

  private static Set<Use> uses(Map<String, Variant<?>> properties) {
    Set<Use> uses = EnumSet.noneOf(Use.class);
    if (value(properties, "Flags") instanceof List<?> flags) {
      for (Use use : Use.values()) {
        if (flags.contains(use.flag())) {
          uses.add(use);
        }
      }
    }
    return uses;
  }

  /** What the system says of a device's battery, in percent; -1 if it does not. */
  int batteryPercent(String devicePath) {
    Map<String, Variant<?>> battery = having(BATTERY).getOrDefault(devicePath, Map.of());
    return value(battery, "Percentage") instanceof Number number ? number.intValue() & 0xFF : -1;
  }

  private Map<String, Map<String, Variant<?>>> having(String interfaceName) {
    Map<String, Map<String, Variant<?>>> having = new TreeMap<>();
    objects.forEach(
        (path, interfaces) -> {
          Map<String, Variant<?>> properties = interfaces.get(interfaceName);
          if (properties != null) {
            having.put(path, properties);
          }
        });
    return having;
  }

  static @Nullable Object value(Map<String, Variant<?>> properties, String name) {
    Variant<?> variant = properties.get(name);
    return variant == null ? null : variant.getValue();
  }

  static boolean isTrue(Map<String, Variant<?>> properties, String name) {
    return Boolean.TRUE.equals(value(properties, name));
  }

  static boolean isFalse(Map<String, Variant<?>> properties, String name) {
    return Boolean.FALSE.equals(value(properties, name));
  }

  private static String text(Map<String, Variant<?>> properties, String name) {
    return value(properties, name) instanceof String text ? text : "";
  }

  private static String pathOf(Map<String, Variant<?>> properties, String name) {
    return value(properties, name) instanceof DBusPath path ? path.getPath() : "";
  }
}
