package datumpeg.bridge.cli;

import datumpeg.bridge.collect.LinkTerms;
import datumpeg.bridge.collect.LiveLinks;
import datumpeg.bridge.collect.LiveSession;
import datumpeg.bridge.collect.MeterLink;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.meter.MeterProfile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** The options that name meters' links, and the links they name. One thread. */
final class MeterLinks {
  @Option(
      names = "--link",
      paramLabel = "LINK",
      description = {
        "serial:PATH[?baud=9600&bits=8&parity=n&stop=1],",
        "ble:ADDRESS[?adapter=hci0&backend=bluez|tinyb] or keyboard: (default)."
      })
  private List<String> links = new ArrayList<>();

  @Option(
      names = "--meter",
      paramLabel = "PROFILE",
      description = {
        "How the meter on the link before it speaks (default general-text-line, of a Bluetooth LE",
        "meter self-describing)."
      })
  private List<String> profiles = new ArrayList<>();

  @Option(
      names = "--silence",
      paramLabel = "SECONDS",
      description = "Say so when nothing came from a link for so long (default 300; 0 = never).")
  private int silenceSeconds = (int) LinkTerms.USUAL.silence().toSeconds();

  /**
   * How long to put up with the links.
   *
   * @param waitSeconds for links that are away when nobody can type
   */
  LinkTerms terms(DatumpegCommand program, int waitSeconds) {
    return new LinkTerms(
        seconds("--silence", silenceSeconds),
        seconds("--wait", waitSeconds),
        program.spans().apart());
  }

  static Duration seconds(String option, int value) {
    if (value < 0) {
      throw new InputException(
          option + " is " + value + "; expected a whole number of seconds, 0 or more.");
    }
    return Duration.ofSeconds(value);
  }

  /** The links to meters in their order; the keyboard needs none. */
  List<MeterLink> all(DatumpegCommand program) {
    LiveLinks opening = program.links();
    List<MeterLink> meters = new ArrayList<>();
    for (String text : links) {
      LinkAddress address = LinkAddress.parse(text);
      if (address instanceof LinkAddress.Replay) {
        throw new InputException(
            "'" + text + "' is a capture; use 'replay JOB --stage STAGE FILE' for it.");
      } else if (!(address instanceof LinkAddress.Keyboard)) {
        MeterProfile profile = profile(program, meters.size(), address);
        meters.add(MeterLink.of("L" + (meters.size() + 1), text, address, profile, opening));
      }
    }
    if (profiles.size() > meters.size()) {
      throw new InputException(
          "--meter is given "
              + profiles.size()
              + (profiles.size() == 1 ? " time" : " times")
              + ", for "
              + meters.size()
              + (meters.size() == 1 ? " link to a meter" : " links to meters")
              + "; expected at most one behind each --link.");
    }
    return meters;
  }

  private MeterProfile profile(DatumpegCommand program, int position, LinkAddress address) {
    return position < profiles.size()
        ? Records.profiles(program).named(profiles.get(position))
        : LiveLinks.usualProfile(address);
  }

  /**
   * Reads what a person types, one line at a time, on a thread of its own: the keyboard is always
   * open.
   */
  static void readInput(DatumpegCommand program, LiveSession live) {
    live.expectInput();
    BufferedReader in =
        new BufferedReader(new InputStreamReader(program.console().in(), StandardCharsets.UTF_8));
    Thread thread =
        new Thread(
            () -> {
              try {
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                  live.typed(line);
                }
              } catch (IOException e) {
                live.typed("");
              } finally {
                live.inputEnded();
              }
            },
            "keyboard");
    thread.setDaemon(true);
    thread.start();
  }
}
