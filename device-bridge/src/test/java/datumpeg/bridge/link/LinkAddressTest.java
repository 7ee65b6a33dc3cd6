package datumpeg.bridge.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.link.LinkAddress.Ble.Backend;
import datumpeg.bridge.link.SerialSettings.Parity;
import datumpeg.bridge.link.SerialSettings.StopBits;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LinkAddressTest {

  @Test
  void aSerialLinkHasTheUsualSettingsUnlessItNamesOthers() {
    assertEquals(
        new LinkAddress.Serial("/dev/ttyUSB0", SerialSettings.DEFAULT),
        LinkAddress.parse("serial:/dev/ttyUSB0"));
    assertEquals(
        new LinkAddress.Serial("COM3", new SerialSettings(115200, 7, Parity.EVEN, StopBits.TWO)),
        LinkAddress.parse("serial:COM3?baud=115200&bits=7&parity=e&stop=2"));
  }

  @Test
  void aBluetoothMeterIsNamedByItsAddress() {
    assertEquals(
        new LinkAddress.Ble("C0:FF:EE:00:00:01", "", Backend.BLUEZ),
        LinkAddress.parse("ble:c0:ff:ee:00:00:01"));
    assertEquals(
        new LinkAddress.Ble("C0:FF:EE:00:00:01", "hci1", Backend.TINYB),
        LinkAddress.parse("ble:C0:FF:EE:00:00:01?adapter=hci1&backend=tinyb"));
  }

  @Test
  void aReplayNamesAFileAndAKeyboardNothing() {
    assertEquals(
        new LinkAddress.Replay(Path.of("a/b.jsonl")), LinkAddress.parse("replay:a/b.jsonl"));
    assertEquals(new LinkAddress.Keyboard(), LinkAddress.parse("keyboard:"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "serial:/dev/ttyUSB0",
        "serial:/dev/ttyUSB0?baud=4800",
        "serial:COM3?baud=19200&bits=7&parity=o&stop=1.5",
        "ble:C0:FF:EE:00:00:01",
        "ble:C0:FF:EE:00:00:01?adapter=hci1&backend=tinyb",
        "replay:morning.jsonl",
        "keyboard:"
      })
  void theTextOfAnAddressReadsBack(String text) {
    assertEquals(text, LinkAddress.parse(text).text());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "/dev/ttyUSB0|no kind before a colon",
        "''|no kind before a colon",
        "seriel:/dev/ttyUSB0|(nearest known: 'serial')",
        "serial:|names no port",
        "serial:/dev/ttyUSB0?bauds=9600|unknown option 'bauds' (nearest known: 'baud')",
        "serial:/dev/ttyUSB0?pairty=n|(nearest known: 'parity')",
        "serial:/dev/ttyUSB0?|unknown option ''",
        "serial:/dev/ttyUSB0?baud|option 'baud' has no value",
        "serial:/dev/ttyUSB0?baud=fast|baud is 'fast'; expected a whole number",
        "serial:/dev/ttyUSB0?baud=-9600|baud is '-9600'",
        "serial:/dev/ttyUSB0?baud=99999999999|baud is '99999999999'",
        "serial:/dev/ttyUSB0?baud=9600&baud=4800|'baud' is given twice",
        "serial:/dev/ttyUSB0?bits=9|expected a whole number from 5 to 8",
        "serial:/dev/ttyUSB0?parity=x|expected n (none)",
        "serial:/dev/ttyUSB0?stop=3|expected 1, 1.5 or 2",
        "ble:|is not a Bluetooth address",
        "ble:C0:FF:EE:00:00|is not a Bluetooth address",
        "ble:C0:FF:EE:00:00:0G|is not a Bluetooth address",
        "ble:C0:FF:EE:00:00:01?backend=blues|expected bluez or tinyb",
        "ble:C0:FF:EE:00:00:01?adaptor=hci0|(nearest known: 'adapter')",
        "ble:C0:FF:EE:00:00:01?adapter=../hci0|expected a name such as hci0",
        "replay:|names no file",
        "keyboard:usb|nothing after the colon"
      })
  void aWrongAddressIsRefusedWithTheReason(String text, String reason) {
    InputException refused =
        assertThrows(InputException.class, () -> LinkAddress.parse(text), text);
    String message = String.valueOf(refused.getMessage());
    assertTrue(message.contains(reason), message);
    assertTrue(message.contains("'" + text + "'"), message);
    assertEquals(2, refused.exitStatus());
  }
}
