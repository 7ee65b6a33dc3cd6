package datumpeg.bridge.doctor;

import datumpeg.bridge.doctor.Symptom.State;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/** Looks at a machine and says what it lacks. Never fails: what cannot be looked at is said. */
public final class Examination {
  /** How Linux names the serial ports a meter can hang on. */
  private static final List<String> PORTS = List.of("ttyUSB", "ttyACM", "ttyS", "ttyAMA", "rfcomm");

  /** Debian's and Arch's names of the group that may open serial ports. */
  private static final List<String> GROUPS = List.of("dialout", "uucp");

  private static final String BUS = "/run/dbus/system_bus_socket";

  private final Machine machine;

  public Examination(Machine machine) {
    this.machine = machine;
  }

  /** All that was looked at, in the order in which a person should deal with it. */
  public List<Symptom> symptoms() {
    List<Symptom> all = new ArrayList<>();
    all.add(of("native libraries", this::natives));
    all.add(of("serial ports", this::ports));
    all.add(of("permission", this::permission));
    all.add(of("D-Bus system bus", this::bus));
    all.add(of("Bluetooth service", this::service));
    all.add(of("Bluetooth adapter", this::adapter));
    all.add(of("native Bluetooth library", this::tinyb));
    all.add(of("sound", this::sound));
    return all;
  }

  private static Symptom of(String subject, Supplier<Symptom> look) {
    try {
      return look.get();
    } catch (RuntimeException e) {
      return new Symptom(subject, State.UNKNOWN, "It could not be looked at: " + e + ".", "");
    }
  }

  private Symptom natives() {
    String subject = "native libraries";
    return machine
        .natives()
        .get()
        .map(obstacle -> Symptom.lacking(subject, obstacle.found(), obstacle.help()))
        .orElseGet(
            () -> Symptom.well(subject, "Those of the record and the meters can be unpacked."));
  }

  private Symptom ports() {
    if (!machine.isLinux()) {
      return unlike("serial ports", "'meters list' shows the ports there are.");
    }
    List<String> found = foundPorts();
    return found.isEmpty()
        ? Symptom.lacking(
            "serial ports",
            "There is no serial port of a meter.",
            "Plug the meter in and switch it on; then 'dmesg | tail' says whether the machine saw"
                + " it. Some cables only charge.")
        : Symptom.well("serial ports", "Found: /dev/" + String.join(", /dev/", found) + ".");
  }

  private List<String> foundPorts() {
    List<String> found = machine.names("/dev", PORTS);
    // Boards announce ports that nothing hangs on; a cable's own come before them.
    List<String> plugged = found.stream().filter(name -> !name.startsWith("ttyS")).toList();
    return plugged.isEmpty() ? found : plugged;
  }

  private Symptom permission() {
    if (!machine.isLinux()) {
      return unlike("permission", "Ports are opened without a group.");
    }
    List<String> barred =
        foundPorts().stream()
            .filter(name -> !Files.isWritable(machine.path("/dev/" + name)))
            .toList();
    if (foundPorts().stream().anyMatch(name -> !barred.contains(name)) || isMember()) {
      return Symptom.well("permission", "This user may open serial ports.");
    }
    String group = GROUPS.stream().filter(this::isGroup).findFirst().orElse("dialout");
    return Symptom.lacking(
        "permission",
        "The user "
            + machine.user()
            + " is not in the group "
            + group
            + ", which opens serial ports.",
        "sudo usermod -aG " + group + " " + machine.user() + ", then log out and in again.");
  }

  private boolean isGroup(String group) {
    return groupLine(group).isPresent();
  }

  private Optional<String> groupLine(String group) {
    return machine.lines("/etc/group").orElse(List.of()).stream()
        .filter(line -> line.startsWith(group + ":"))
        .findFirst();
  }

  private boolean isMember() {
    return machine.user().equals("root")
        || GROUPS.stream()
            .flatMap(group -> groupLine(group).stream())
            .map(line -> line.substring(line.lastIndexOf(':') + 1))
            .anyMatch(members -> List.of(members.split(",", -1)).contains(machine.user()));
  }

  private Symptom bus() {
    if (!machine.isLinux()) {
      return unlike("D-Bus system bus", "Bluetooth LE is read through BlueZ, on Linux only.");
    }
    String named = machine.environment().getOrDefault("DBUS_SYSTEM_BUS_ADDRESS", "");
    if (!named.isEmpty()) {
      return Symptom.well("D-Bus system bus", "DBUS_SYSTEM_BUS_ADDRESS names " + named + ".");
    }
    return machine.has(BUS)
        ? Symptom.well("D-Bus system bus", "It is there: " + BUS + ".")
        : Symptom.lacking(
            "D-Bus system bus",
            "There is none at " + BUS + "; Bluetooth LE meters need it, serial ones do not.",
            "sudo apt install dbus, then sudo systemctl start dbus.");
  }

  private Symptom service() {
    if (!machine.isLinux()) {
      return unlike("Bluetooth service", "Bluetooth LE is read through BlueZ, on Linux only.");
    }
    List<String> places =
        List.of("/usr/libexec/bluetooth/bluetoothd", "/usr/lib/bluetooth/bluetoothd");
    return places.stream()
        .filter(machine::has)
        .findFirst()
        .map(place -> Symptom.well("Bluetooth service", "BlueZ is installed: " + place + "."))
        .orElseGet(
            () ->
                Symptom.lacking(
                    "Bluetooth service",
                    "BlueZ is not installed; Bluetooth LE meters need it, serial ones do not.",
                    "sudo apt install bluez, then sudo systemctl enable --now bluetooth."));
  }

  private Symptom adapter() {
    if (!machine.isLinux()) {
      return unlike("Bluetooth adapter", "Bluetooth LE is read through BlueZ, on Linux only.");
    }
    List<String> adapters = machine.names("/sys/class/bluetooth", List.of("hci"));
    if (adapters.isEmpty()) {
      return Symptom.lacking(
          "Bluetooth adapter",
          "There is none; Bluetooth LE meters need one, serial ones do not.",
          "Plug a Bluetooth adapter in, or switch it on in the machine's firmware.");
    }
    return isBlocked()
        ? Symptom.lacking(
            "Bluetooth adapter",
            "There is " + String.join(", ", adapters) + ", but Bluetooth is switched off.",
            "rfkill unblock bluetooth.")
        : Symptom.well("Bluetooth adapter", "Found: " + String.join(", ", adapters) + ".");
  }

  private boolean isBlocked() {
    return machine.names("/sys/class/rfkill", List.of("rfkill")).stream()
        .filter(name -> isLine("/sys/class/rfkill/" + name + "/type", "bluetooth"))
        .anyMatch(
            name ->
                isLine("/sys/class/rfkill/" + name + "/soft", "1")
                    || isLine("/sys/class/rfkill/" + name + "/hard", "1"));
  }

  private boolean isLine(String file, String expected) {
    return machine.lines(file).orElse(List.of()).equals(List.of(expected));
  }

  /** Natives are carried for these only; the default way to Bluetooth LE needs none. */
  private Symptom tinyb() {
    String architecture = machine.architecture().toLowerCase(Locale.ROOT);
    boolean carried =
        machine.isLinux()
            && List.of("amd64", "x86_64", "x86", "i386", "arm").contains(architecture);
    return carried
        ? Symptom.well(
            "native Bluetooth library",
            "One is carried for " + architecture + "; it is used only with backend=tinyb.")
        : Symptom.lacking(
            "native Bluetooth library",
            "None is carried for " + machine.operatingSystem() + " on " + architecture + ".",
            "Leave backend=tinyb out: the usual way to Bluetooth LE meters needs no native library.");
  }

  private Symptom sound() {
    return machine.sound().getAsBoolean()
        ? Symptom.well("sound", "A tone can be played.")
        : Symptom.lacking(
            "sound",
            "No tone can be played; what is accepted or held is shown as well.",
            "Over SSH the terminal's own bell is used; otherwise: sudo apt install alsa-utils, and"
                + " the user in the group audio.");
  }

  private Symptom unlike(String subject, String found) {
    return new Symptom(subject, State.UNKNOWN, found, "");
  }
}
