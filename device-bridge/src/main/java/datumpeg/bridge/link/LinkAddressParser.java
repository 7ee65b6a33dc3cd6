package datumpeg.bridge.link;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.link.SerialSettings.Parity;
import datumpeg.bridge.link.SerialSettings.StopBits;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reads and writes the text of link addresses. */
final class LinkAddressParser {
  private static final List<String> KINDS = List.of("serial", "ble", "replay", "keyboard");
  private static final List<String> SERIAL_OPTIONS = List.of("baud", "bits", "parity", "stop");
  private static final String EXPECTED =
      "expected serial:PATH[?baud=9600&bits=8&parity=n&stop=1],"
          + " ble:ADDRESS[?adapter=hci0&backend=bluez|tinyb], replay:FILE or keyboard:";

  private LinkAddressParser() {}

  static LinkAddress parse(String text) {
    int colon = text.indexOf(':');
    if (colon < 0) {
      throw wrong(text, "it has no kind before a colon; " + EXPECTED);
    }
    String kind = text.substring(0, colon);
    String rest = text.substring(colon + 1);
    return switch (kind) {
      case "serial" -> serial(text, rest);
      case "ble" -> BleAddressText.read(text, rest);
      case "replay" -> replay(text, rest);
      case "keyboard" -> keyboard(text, rest);
      default ->
          throw wrong(
              text, "unknown kind of link '" + kind + "'" + nearest(kind, KINDS) + "; " + EXPECTED);
    };
  }

  private static LinkAddress serial(String text, String rest) {
    int question = rest.indexOf('?');
    String path = question < 0 ? rest : rest.substring(0, question);
    if (path.indexOf('\0') >= 0) {
      throw wrong(text, "its path has a character that no path has");
    }
    if (path.isBlank()) {
      throw wrong(text, "it names no port; expected for instance serial:/dev/ttyUSB0");
    }
    Map<String, String> options =
        question < 0 ? Map.of() : options(text, rest.substring(question + 1), SERIAL_OPTIONS);
    SerialSettings usual = SerialSettings.DEFAULT;
    return new LinkAddress.Serial(
        path,
        new SerialSettings(
            options.containsKey("baud") ? baud(text, options.get("baud")) : usual.baud(),
            options.containsKey("bits") ? bits(text, options.get("bits")) : usual.dataBits(),
            options.containsKey("parity") ? parity(text, options.get("parity")) : usual.parity(),
            options.containsKey("stop") ? stop(text, options.get("stop")) : usual.stopBits()));
  }

  /** What stands behind the question mark, by name. */
  static Map<String, String> options(String text, String query, List<String> known) {
    Map<String, String> options = new LinkedHashMap<>();
    for (String option : query.split("&", -1)) {
      int equals = option.indexOf('=');
      String name = equals < 0 ? option : option.substring(0, equals);
      if (!known.contains(name)) {
        throw wrong(text, "unknown option '" + name + "'" + nearest(name, known));
      }
      if (equals < 0) {
        throw wrong(text, "option '" + name + "' has no value; expected " + name + "=VALUE");
      }
      if (options.put(name, option.substring(equals + 1)) != null) {
        throw wrong(text, "option '" + name + "' is given twice");
      }
    }
    return options;
  }

  private static int baud(String text, String value) {
    return wholeNumber(text, "baud", value, 50, 4_000_000);
  }

  private static int bits(String text, String value) {
    return wholeNumber(text, "bits", value, 5, 8);
  }

  private static int wholeNumber(String text, String name, String value, int least, int most) {
    boolean digits = !value.isEmpty() && value.length() <= 7;
    for (int index = 0; index < value.length(); index++) {
      digits &= value.charAt(index) >= '0' && value.charAt(index) <= '9';
    }
    int number = digits ? Integer.parseInt(value) : -1;
    if (number < least || number > most) {
      throw wrong(
          text,
          "%s is '%s'; expected a whole number from %d to %d".formatted(name, value, least, most));
    }
    return number;
  }

  private static Parity parity(String text, String value) {
    for (Parity parity : Parity.values()) {
      if (parity.letter().equals(value.toLowerCase(Locale.ROOT))) {
        return parity;
      }
    }
    throw wrong(
        text,
        "parity is '" + value + "'; expected n (none), e (even), o (odd), m (mark) or s (space)");
  }

  private static StopBits stop(String text, String value) {
    for (StopBits bits : StopBits.values()) {
      if (bits.number().equals(value)) {
        return bits;
      }
    }
    throw wrong(text, "stop is '" + value + "'; expected 1, 1.5 or 2");
  }

  private static LinkAddress replay(String text, String rest) {
    if (rest.isBlank()) {
      throw wrong(text, "it names no file; expected replay:FILE");
    }
    try {
      return new LinkAddress.Replay(Path.of(rest));
    } catch (InvalidPathException notAPath) {
      throw wrong(text, "'" + rest + "' is not a file name on this machine");
    }
  }

  private static LinkAddress keyboard(String text, String rest) {
    if (!rest.isEmpty()) {
      throw wrong(text, "a keyboard link has nothing after the colon, found '" + rest + "'");
    }
    return new LinkAddress.Keyboard();
  }

  static String serialText(LinkAddress.Serial address) {
    SerialSettings settings = address.settings();
    SerialSettings usual = SerialSettings.DEFAULT;
    List<String> options = new ArrayList<>();
    if (settings.baud() != usual.baud()) {
      options.add("baud=" + settings.baud());
    }
    if (settings.dataBits() != usual.dataBits()) {
      options.add("bits=" + settings.dataBits());
    }
    if (settings.parity() != usual.parity()) {
      options.add("parity=" + settings.parity().letter());
    }
    if (settings.stopBits() != usual.stopBits()) {
      options.add("stop=" + settings.stopBits().number());
    }
    String query = options.isEmpty() ? "" : "?" + String.join("&", options);
    return "serial:" + address.path() + query;
  }

  static InputException wrong(String text, String what) {
    return new InputException("The link '" + text + "' cannot be used: " + what + ".");
  }

  private static String nearest(String word, List<String> known) {
    String best = known.get(0);
    for (String candidate : known) {
      if (distance(word, candidate) < distance(word, best)) {
        best = candidate;
      }
    }
    return " (nearest known: '" + best + "')";
  }

  /**
   * Edits that turn one word into the other. V. I. Levenshtein, Binary codes capable of correcting
   * deletions, insertions and reversals, 1966; R. Wagner and M. Fischer, The string-to-string
   * correction problem, 1974.
   */
  private static int distance(String one, String other) {
    int[] row = new int[other.length() + 1];
    Arrays.setAll(row, index -> index);
    for (int i = 1; i <= one.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= other.length(); j++) {
        int changed = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[other.length()];
  }
}
