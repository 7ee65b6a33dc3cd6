package datumpeg.bridge.frame.nmea;

import java.util.List;
import java.util.Optional;

/**
 * One sentence of NMEA 0183: {@code $TTSSS,field,…*HH}.
 *
 * @param talker the letters before the sentence's own, such as II
 * @param kind the sentence's three letters, such as XDR
 * @param fields what stands between the commas
 * @param checksum whether the exclusive or of all characters between $ and * is the one it states
 */
public record Sentence(String talker, String kind, List<String> fields, Checksum checksum) {
  /** Shortest address: one letter of talker and three of kind. */
  private static final int LEAST_ADDRESS = 4;

  public Sentence {
    fields = List.copyOf(fields);
  }

  /** What the sentence's checksum says. */
  public enum Checksum {
    RIGHT,
    WRONG,
    ABSENT
  }

  /** The sentence a line is; empty where it is none. */
  static Optional<Sentence> of(String line) {
    String text = line.strip();
    if (text.length() <= LEAST_ADDRESS || (text.charAt(0) != '$' && text.charAt(0) != '!')) {
      return Optional.empty();
    }
    int star = text.lastIndexOf('*');
    String body = text.substring(1, star < 0 ? text.length() : star);
    List<String> parts = List.of(body.split(",", -1));
    String address = parts.get(0);
    if (address.length() < LEAST_ADDRESS || !address.chars().allMatch(Sentence::isLetterOrDigit)) {
      return Optional.empty();
    }
    int kindStart = address.length() - 3;
    return Optional.of(
        new Sentence(
            address.substring(0, kindStart),
            address.substring(kindStart),
            parts.subList(1, parts.size()),
            star < 0 ? Checksum.ABSENT : checksum(body, text.substring(star + 1))));
  }

  private static boolean isLetterOrDigit(int letter) {
    return (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9');
  }

  /** The standard writes capitals; small letters are seen and mean the same. */
  private static Checksum checksum(String body, String stated) {
    int sum = 0;
    for (int index = 0; index < body.length(); index++) {
      sum ^= body.charAt(index);
    }
    return stated.matches("[0-9A-Fa-f]{2}") && Integer.parseInt(stated, 16) == sum
        ? Checksum.RIGHT
        : Checksum.WRONG;
  }
}
