package datumpeg.bridge.cli;

import datumpeg.bridge.collect.LinkTerms;
import datumpeg.bridge.collect.MeterLink;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.serial.SerialPorts;
import datumpeg.bridge.meter.MeterProfiles;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code meters list}, {@code meters watch}. */
@Command(name = "meters", description = "The links of this machine, and what meters send on them.")
final class MetersCommand {
  private final DatumpegCommand program;

  MetersCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Command(name = "list", description = "List the serial links of this machine as they are now.")
  int list() {
    List<SerialPorts.Found> ports = SerialPorts.list();
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("links", JsonArray.of(ports.stream().map(MetersCommand::json)))
              .build());
    } else if (ports.isEmpty()) {
      program.console().out().println("No serial port was found: plug the meter in and ask again.");
    } else {
      TextTable table = TextTable.ofWords();
      ports.forEach(port -> table.row(link(port), clean(port.description())));
      table.print(program.console().out(), "");
    }
    return 0;
  }

  private static JsonObject json(SerialPorts.Found port) {
    return JsonObject.builder()
        .put("link", link(port))
        .put("description", clean(port.description()))
        .build();
  }

  private static String link(SerialPorts.Found port) {
    return "serial:" + port.path();
  }

  /** A device chooses its own description: nothing of it may steer the terminal. */
  private static String clean(String description) {
    return description.replaceAll("\\p{C}", "?");
  }

  @Command(
      name = "watch",
      description = {
        "Show the raw bytes of a link as they come: time (UTC), hexadecimal digits and text.",
        "A link that is lost is opened again. Nothing is recorded. End it with Ctrl-C."
      })
  int watch(
      @Parameters(
              paramLabel = "LINK",
              description = "serial:PATH[?baud=9600&bits=8&parity=n&stop=1].")
          String text,
      @Option(
              names = "--wait",
              paramLabel = "SECONDS",
              description = "Give up when the link is away for so long (default: go on).")
          @Nullable Integer waitSeconds)
      throws InterruptedException {
    if (program.json()) {
      throw new InputException("'meters watch' shows bytes as they come; it has no JSON document.");
    }
    LinkAddress.Serial address = serial(text);
    Optional<Duration> patience =
        Optional.ofNullable(waitSeconds).map(value -> MeterLinks.seconds("--wait", value));
    MetersWatch watch = new MetersWatch(program.console().out(), program.console().err());
    MeterLink meter = new MeterLink("L1", address, MeterProfiles.GENERAL_TEXT_LINE);
    try (Link link = meter.open(LinkClock.system(), LinkTerms.USUAL.silence(), watch)) {
      program
          .console()
          .err()
          .println("Watching " + link.address().text() + "; take a reading, end with Ctrl-C.");
      throw watch.awaitEnd(patience);
    }
  }

  private static LinkAddress.Serial serial(String text) {
    if (LinkAddress.parse(text) instanceof LinkAddress.Serial serial) {
      return serial;
    }
    throw new InputException("'" + text + "' has no live bytes to watch; expected serial:PATH.");
  }
}
