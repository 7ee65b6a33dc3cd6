package datumpeg.bridge.doctor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.doctor.Symptom.State;
import datumpeg.bridge.natives.NativeFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Machines of the test's own, below a folder that stands for the root. */
class ExaminationTest {
  private static final NativeFiles.Obstacle NO_ROOM =
      new NativeFiles.Obstacle("They could be unpacked nowhere.", "Make room.");

  @TempDir Path root;

  private Symptom symptom(String subject, String system, String user, BooleanSupplier sound) {
    Machine machine = new Machine(root, system, "amd64", Map.of(), user, sound, Optional::empty);
    return new Examination(machine)
        .symptoms().stream()
            .filter(symptom -> symptom.subject().equals(subject))
            .findFirst()
            .orElseThrow();
  }

  private Symptom linux(String subject) {
    return symptom(subject, "Linux", "ines", () -> true);
  }

  private void file(String absolute, String text) throws IOException {
    Path file = root.resolve(absolute.substring(1));
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  @Test
  void anEmptyMachineLacksEverythingAndSaysWhatHelps() {
    Machine machine =
        new Machine(
            root, "Linux", "riscv64", Map.of(), "ines", () -> false, () -> Optional.of(NO_ROOM));
    for (Symptom symptom : new Examination(machine).symptoms()) {
      assertEquals(State.LACKING, symptom.state(), symptom.toString());
      assertTrue(symptom.found().endsWith("."), symptom.found());
      assertTrue(symptom.help().endsWith("."), symptom.help());
    }
  }

  @Test
  void aMachineThatHasAllIsWell() throws IOException {
    file("/dev/ttyUSB0", "");
    file("/etc/group", "root:x:0:\ndialout:x:20:tom,ines\n");
    file("/run/dbus/system_bus_socket", "");
    file("/usr/libexec/bluetooth/bluetoothd", "");
    file("/sys/class/bluetooth/hci0/address", "");
    Machine machine =
        new Machine(root, "Linux", "amd64", Map.of(), "ines", () -> true, Optional::empty);
    for (Symptom symptom : new Examination(machine).symptoms()) {
      assertEquals(State.WELL, symptom.state(), symptom.toString());
      assertEquals("", symptom.help());
    }
  }

  @Test
  void theGroupIsNamedWithTheCommandThatJoinsIt() throws IOException {
    file("/etc/group", "dialout:x:20:tom\n");
    assertTrue(
        linux("permission").help().contains("sudo usermod -aG dialout ines"),
        linux("permission").help());
    file("/etc/group", "uucp:x:14:\n");
    assertTrue(linux("permission").help().contains("-aG uucp ines"));
    assertEquals(State.WELL, symptom("permission", "Linux", "root", () -> true).state());
  }

  @Test
  void aCableIsToldBeforeTheBoardsOwnPorts() throws IOException {
    file("/dev/ttyS0", "");
    assertEquals("Found: /dev/ttyS0.", linux("serial ports").found());
    file("/dev/ttyACM0", "");
    assertEquals("Found: /dev/ttyACM0.", linux("serial ports").found());
  }

  @Test
  void anAdapterThatIsSwitchedOffIsToldApartFromNone() throws IOException {
    file("/sys/class/bluetooth/hci0/address", "");
    file("/sys/class/rfkill/rfkill0/type", "wlan\n");
    file("/sys/class/rfkill/rfkill0/soft", "1\n");
    assertEquals(State.WELL, linux("Bluetooth adapter").state());
    file("/sys/class/rfkill/rfkill1/type", "bluetooth\n");
    file("/sys/class/rfkill/rfkill1/soft", "1\n");
    assertTrue(linux("Bluetooth adapter").help().contains("rfkill unblock"));
  }

  @Test
  void aBusNamedInTheEnvironmentIsTaken() {
    Map<String, String> environment = Map.of("DBUS_SYSTEM_BUS_ADDRESS", "unix:path=/tmp/bus");
    Machine machine =
        new Machine(root, "Linux", "amd64", environment, "ines", () -> true, Optional::empty);
    assertTrue(
        new Examination(machine)
            .symptoms().stream().anyMatch(found -> found.found().contains("unix:path=/tmp/bus")));
  }

  @Test
  void otherSystemsAndFaultsAreSaidAndNothingFails() throws IOException {
    assertEquals(State.UNKNOWN, symptom("permission", "Windows 11", "ines", () -> true).state());
    Symptom sound =
        symptom(
            "sound",
            "Linux",
            "ines",
            () -> {
              throw new IllegalStateException("no mixer");
            });
    assertEquals(State.UNKNOWN, sound.state());
    assertTrue(sound.found().contains("no mixer"), sound.found());
    // A file where a folder is expected, bytes that are no text.
    file("/dev", "");
    file("/sys/class/bluetooth", "");
    Files.createDirectories(root.resolve("etc"));
    Files.write(root.resolve("etc/group"), new byte[] {(byte) 0xC3, 0x28});
    assertEquals(State.LACKING, linux("serial ports").state());
    assertEquals(State.LACKING, linux("permission").state());
    assertEquals(State.LACKING, linux("Bluetooth adapter").state());
  }
}
