package datumpeg.bridge.link;

import datumpeg.bridge.link.LinkAddress.Ble.Backend;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reads and writes the text of a Bluetooth LE meter's address. */
final class BleAddressText {
  private static final List<String> OPTIONS = List.of("adapter", "backend");
  private static final Backend USUAL = Backend.BLUEZ;

  private BleAddressText() {}

  static LinkAddress.Ble read(String text, String rest) {
    int question = rest.indexOf('?');
    String device = (question < 0 ? rest : rest.substring(0, question)).toUpperCase(Locale.ROOT);
    if (!device.matches("[0-9A-F]{2}(:[0-9A-F]{2}){5}")) {
      throw LinkAddressParser.wrong(
          text,
          "'"
              + device
              + "' is not a Bluetooth address; expected six pairs of hexadecimal digits, for"
              + " instance ble:C0:FF:EE:00:00:01");
    }
    Map<String, String> options =
        question < 0
            ? Map.of()
            : LinkAddressParser.options(text, rest.substring(question + 1), OPTIONS);
    return new LinkAddress.Ble(device, adapter(text, options), backend(text, options));
  }

  private static String adapter(String text, Map<String, String> options) {
    String adapter = options.getOrDefault("adapter", "hci0");
    if (!adapter.matches("[A-Za-z0-9_]{1,32}")) {
      throw LinkAddressParser.wrong(
          text, "adapter is '" + adapter + "'; expected a name such as hci0");
    }
    return options.containsKey("adapter") ? adapter : "";
  }

  private static Backend backend(String text, Map<String, String> options) {
    String word = options.getOrDefault("backend", USUAL.word());
    for (Backend backend : Backend.values()) {
      if (backend.word().equals(word)) {
        return backend;
      }
    }
    throw LinkAddressParser.wrong(text, "backend is '" + word + "'; expected bluez or tinyb");
  }

  static String write(LinkAddress.Ble address) {
    List<String> options = new ArrayList<>();
    if (!address.adapter().isEmpty()) {
      options.add("adapter=" + address.adapter());
    }
    if (address.backend() != USUAL) {
      options.add("backend=" + address.backend().word());
    }
    String query = options.isEmpty() ? "" : "?" + String.join("&", options);
    return "ble:" + address.device() + query;
  }
}
