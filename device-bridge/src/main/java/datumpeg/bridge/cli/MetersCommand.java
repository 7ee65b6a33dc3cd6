package datumpeg.bridge.cli;

import datumpeg.bridge.collect.LinkTerms;
import datumpeg.bridge.collect.LiveLinks;
import datumpeg.bridge.collect.MeterLink;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.RegisterBlock;
import datumpeg.bridge.link.SerialSettings;
import datumpeg.bridge.link.modbus.ModbusLink;
import datumpeg.bridge.meter.learn.Learning;
import datumpeg.bridge.meter.learn.Proposal;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code meters list}, {@code meters watch}, {@code meters learn}. */
@Command(name = "meters", description = "The links of this machine, and what meters send on them.")
final class MetersCommand {
  private final DatumpegCommand program;

  MetersCommand(DatumpegCommand program) {
    this.program = program;
  }

  @Command(
      name = "list",
      description = {
        "List the serial links of this machine as they are now, and the Bluetooth LE",
        "devices that are heard meanwhile."
      })
  int list(
      @Option(
              names = "--scan",
              paramLabel = "SECONDS",
              defaultValue = "4",
              description =
                  "How long to listen for Bluetooth LE devices (default ${DEFAULT-VALUE}; 0: not at"
                      + " all).")
          int seconds) {
    if (seconds < 0 || seconds > 60) {
      throw new InputException("--scan is " + seconds + "; expected 0 to 60 seconds.");
    }
    FoundLinks found = FoundLinks.lookFor(program, Duration.ofSeconds(seconds));
    if (program.json()) {
      Records.print(program, found.json());
    } else {
      found.print(program.console());
    }
    return 0;
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
              description = {
                "serial:PATH[?baud=9600&bits=8&parity=n&stop=1] or",
                "ble:ADDRESS[?adapter=hci0&backend=bluez|tinyb]."
              })
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
    LinkAddress address = live(text);
    Optional<Duration> patience =
        Optional.ofNullable(waitSeconds).map(value -> MeterLinks.seconds("--wait", value));
    MetersWatch watch = new MetersWatch(program.console().out(), program.console().err());
    MeterLink meter =
        new MeterLink("L1", address, LiveLinks.usualProfile(address), program.links());
    try (Link link = meter.open(LinkClock.system(), LinkTerms.USUAL.silence(), watch)) {
      program
          .console()
          .err()
          .println("Watching " + link.address().text() + "; take a reading, end with Ctrl-C.");
      throw watch.awaitEnd(patience);
    }
  }

  @Command(
      name = "check",
      description = {
        "Hold a meter against what is known, and keep it in the meter's history.",
        "Methods and their values: known-distance (known, known-uncertainty, reading);",
        "zero-constant (AB, BC, AC: three points in a line); two-peg (middle-P, middle-Q,",
        "near-P, near-Q, sight-P, sight-Q); reversal (face-1, face-2 of a tilt meter)."
      })
  int check(@Mixin MetersCheck check) throws InterruptedException {
    return check.run(program);
  }

  @Command(
      name = "doctor",
      description = "Say in plain words what this machine lacks to read meters, and what helps.")
  int doctor() {
    return MetersDoctor.ofThisMachine(program).run();
  }

  @Command(
      name = "learn",
      description = {
        "Find out how an unknown meter speaks: take three readings and type what the display shows.",
        "Writes a profile into the folder meters beside the record."
      })
  int learn(
      @Option(
              names = "--link",
              paramLabel = "LINK",
              required = true,
              description = "serial:PATH[?baud=9600&bits=8&parity=n&stop=1] or ble:ADDRESS.")
          String text,
      @Option(
              names = "--as",
              paramLabel = "NAME",
              required = true,
              description = "The new profile's name: letters, digits, hyphens.")
          String id,
      @Option(
              names = "--trigger",
              paramLabel = "TEXT",
              defaultValue = "",
              description = "What makes the meter measure, such as 'M\\r'; an empty line sends it.")
          String trigger,
      @Option(
              names = "--registers",
              paramLabel = "BLOCK",
              description =
                  "Modbus registers to look in: holding:0+10@1 are 10 of station 1 from 0.")
          @Nullable String registers)
      throws InterruptedException {
    LearnedProfile file = new LearnedProfile(program, id);
    file.requireFree();
    LinkAddress address = live(text);
    Bytes command = CommandText.bytes(trigger);
    Optional<RegisterBlock> block = Optional.ofNullable(registers).map(BlockText::parse);
    HeardBytes heard = new HeardBytes();
    try (Link link = link(address, block, heard)) {
      Optional<Proposal> found =
          new MetersLearn(
                  program,
                  link,
                  heard,
                  block.isPresent() || !command.isEmpty(),
                  command,
                  block.map(Learning::ofRegisters).orElseGet(Learning::ofSender))
              .converse();
      found.ifPresent(proposal -> file.write(proposal, settings(address), command, address.text()));
    }
    return 0;
  }

  private Link link(LinkAddress address, Optional<RegisterBlock> block, HeardBytes heard) {
    if (block.isEmpty()) {
      return program
          .links()
          .open(address, LiveLinks.usualProfile(address), LinkClock.system(), heard);
    }
    if (address instanceof LinkAddress.Serial serial) {
      return ModbusLink.open(serial, block.get(), LinkClock.system(), heard);
    }
    throw new InputException("--registers belongs to a serial link, found " + address.text() + ".");
  }

  private static SerialSettings settings(LinkAddress address) {
    return address instanceof LinkAddress.Serial serial
        ? serial.settings()
        : SerialSettings.DEFAULT;
  }

  static LinkAddress live(String text) {
    LinkAddress address = LinkAddress.parse(text);
    if (address instanceof LinkAddress.Serial || address instanceof LinkAddress.Ble) {
      return address;
    }
    throw new InputException(
        "'" + text + "' has no live bytes; expected serial:PATH or ble:ADDRESS.");
  }
}
