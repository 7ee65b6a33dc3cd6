package datumpeg.bridge.cli;

import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkUnavailableException;
import datumpeg.bridge.link.ble.BleSighting;
import datumpeg.bridge.link.serial.SerialPorts;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The links of this machine as they are now.
 *
 * @param notLooked why Bluetooth LE was not looked at, where it should have been
 */
record FoundLinks(List<One> links, Optional<String> notLooked) {

  /** One link and what the machine or the device says of it, safe to print. */
  record One(String link, String description) {}

  FoundLinks {
    links = List.copyOf(links);
  }

  static FoundLinks lookFor(DatumpegCommand program, Duration scan) {
    List<One> links = new ArrayList<>();
    SerialPorts.list()
        .forEach(port -> links.add(new One("serial:" + port.path(), clean(port.description()))));
    if (scan.isZero()) {
      return new FoundLinks(links, Optional.empty());
    }
    try {
      program
          .links()
          .backend(LinkAddress.Ble.Backend.BLUEZ)
          .discover("", scan)
          .forEach(heard -> links.add(new One("ble:" + heard.address(), said(heard))));
      return new FoundLinks(links, Optional.empty());
    } catch (LinkUnavailableException unavailable) {
      return new FoundLinks(links, Optional.of(String.valueOf(unavailable.getMessage())));
    }
  }

  private static String said(BleSighting heard) {
    String strength =
        heard.strengthDbm().isPresent() ? heard.strengthDbm().getAsInt() + " dBm" : "";
    return (heard.name() + " " + strength).strip();
  }

  /** A device chooses its own description: nothing of it may steer the terminal. */
  private static String clean(String description) {
    return description.replaceAll("\\p{C}", "?");
  }

  JsonObject json() {
    JsonObject.Builder document =
        JsonObject.builder()
            .put("format", 1)
            .put(
                "links",
                JsonArray.of(
                    links.stream()
                        .map(
                            one ->
                                JsonObject.builder()
                                    .put("link", one.link())
                                    .put("description", one.description())
                                    .build())));
    notLooked.ifPresent(why -> document.put("notLooked", why));
    return document.build();
  }

  void print(Console console) {
    if (links.isEmpty()) {
      console.out().println("No link was found: plug the meter in or switch it on, and ask again.");
    } else {
      TextTable table = TextTable.ofWords();
      links.forEach(one -> table.row(one.link(), one.description()));
      table.print(console.out(), "");
    }
    notLooked.ifPresent(why -> console.err().println("Serial links only. " + why));
  }
}
