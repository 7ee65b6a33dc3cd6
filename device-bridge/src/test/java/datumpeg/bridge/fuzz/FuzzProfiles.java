package datumpeg.bridge.fuzz;

import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.ProfileFile;

/** Invented meters whose bytes are fuzzed. */
final class FuzzProfiles {
  static final MeterProfile LINES =
      ProfileFile.read(
          """
          id = "lines"
          angle_zero = "level"
          sign = "reversed"
          [text-pattern]
          line = "{word}:{value}{direction} {rest}"
          unit = "deg"
          minus = ["L"]
          longest_line_bytes = 64
          """,
          "fuzz");

  static final MeterProfile FRAMES =
      ProfileFile.read(
          """
          id = "frames"
          [binary-frame]
          start = "aaaa"
          length = 8
          check_sum = "xor"
          offset = 2
          byte_order = "big"
          format = "medical32"
          unit = "mm"
          """,
          "fuzz");

  private FuzzProfiles() {}
}
