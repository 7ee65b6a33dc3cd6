package datumpeg.bridge.record.entry;

import java.util.regex.Pattern;

/** The checks on text that several kinds share. */
final class Texts {
  private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");
  private static final Pattern HEX_BYTES = Pattern.compile("(?:[0-9a-f]{2})*");

  private Texts() {}

  static void requireText(String value, String name) {
    if (value.isBlank()) {
      throw new IllegalArgumentException(name + " is blank");
    }
  }

  static void requireSha256(String value, String name) {
    if (!SHA_256.matcher(value).matches()) {
      throw new IllegalArgumentException(
          name + " is \"" + value + "\"; expected 64 lower-case hexadecimal digits");
    }
  }

  static void requireHexBytes(String value, String name) {
    if (!HEX_BYTES.matcher(value).matches()) {
      throw new IllegalArgumentException(
          name + " is \"" + value + "\"; expected pairs of lower-case hexadecimal digits");
    }
  }
}
