package datumpeg.bridge.cli;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfiles;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;

/** The options that name meters' links, and the links they name. One thread. */
final class MeterLinks {
  @Option(
      names = "--link",
      paramLabel = "LINK",
      description = "serial:PATH[?baud=9600&bits=8&parity=n&stop=1] or keyboard: (default).")
  private List<String> links = new ArrayList<>();

  @Option(
      names = "--meter",
      paramLabel = "PROFILE",
      description = "How the meter on the link before it speaks (default general-text-line).")
  private List<String> profiles = new ArrayList<>();

  /** The serial links by their names in the capture; the keyboard needs none. */
  Map<String, LinkAddress.Serial> serial(DatumpegCommand program) {
    Map<String, LinkAddress.Serial> serial = new LinkedHashMap<>();
    for (String text : links) {
      LinkAddress address = LinkAddress.parse(text);
      if (address instanceof LinkAddress.Serial port) {
        serial.put("L" + (serial.size() + 1), settled(text, port, profile(program, serial.size())));
      } else if (address instanceof LinkAddress.Replay) {
        throw new InputException(
            "'" + text + "' is a capture; use 'replay JOB --stage STAGE FILE' for it.");
      }
    }
    if (profiles.size() > serial.size()) {
      throw new InputException(
          "There are "
              + profiles.size()
              + " --meter options for "
              + serial.size()
              + " serial links; expected at most one for each.");
    }
    return serial;
  }

  /** A link that says nothing of its line is set up as its meter's profile says. */
  private static LinkAddress.Serial settled(
      String text, LinkAddress.Serial port, MeterProfile profile) {
    return text.contains("?") ? port : new LinkAddress.Serial(port.path(), profile.serial());
  }

  MeterProfile profile(DatumpegCommand program, int position) {
    return position < profiles.size()
        ? Records.profiles(program).named(profiles.get(position))
        : MeterProfiles.GENERAL_TEXT_LINE;
  }
}
