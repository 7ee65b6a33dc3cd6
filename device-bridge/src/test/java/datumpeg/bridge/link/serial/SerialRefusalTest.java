package datumpeg.bridge.link.serial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.LinkUnavailableException.Obstacle;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SerialRefusalTest {

  // The numbers were read from the system itself (Linux 64 bit): a port locked by flock, one with
  // TIOCEXCL, one without permission as an ordinary user, a plain file, a folder.
  @ParameterizedTest
  @CsvSource({"11,BUSY", "16,BUSY", "13,NOT_PERMITTED", "25,REFUSED", "21,REFUSED", "5,REFUSED"})
  void theAnswerOfTheSystemDecides(int error, Obstacle obstacle) {
    LinkUnavailableException refusal = SerialRefusal.posix("/dev/ttyUSB0", error);
    assertEquals(obstacle, refusal.obstacle());
    assertTrue(String.valueOf(refusal.getMessage()).contains("/dev/ttyUSB0"));
  }

  @Test
  void aDeniedPortNamesTheGroup() {
    String message = String.valueOf(SerialRefusal.posix("/dev/ttyUSB0", 13).getMessage());
    assertTrue(message.contains("group dialout"), message);
  }

  @ParameterizedTest
  @CsvSource({"5,BUSY", "2,MISSING", "31,REFUSED"})
  void windowsAnswersWithItsOwnNumbers(int error, Obstacle obstacle) {
    assertEquals(obstacle, SerialRefusal.windows("COM3", error, List.of("COM1")).obstacle());
  }

  @Test
  void aMachineWithoutPortsIsSaidToHaveNone() {
    assertEquals(
        "There is no serial port COM3; this machine has no serial port now.",
        SerialRefusal.missing("COM3", List.of()).getMessage());
  }
}
