package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The last row of a chain at some moment. Kept elsewhere (on paper, in a report, in the archive),
 * it shows later whether rows up to it were cut off or written anew.
 *
 * @param origin the chain
 * @param sequence the row's number in the chain, from 1
 * @param digest the row's SHA-256, 64 lower-case hexadecimal digits
 */
public record Head(UUID origin, long sequence, String digest) {
  private static final Pattern PRINTED =
      Pattern.compile("([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}):([0-9]{1,15}):([0-9a-f]{64})");

  public Head {
    if (sequence < 1) {
      throw new IllegalArgumentException("sequence is " + sequence + "; expected 1 or more");
    }
    Texts.requireSha256(digest, "digest");
  }

  /**
   * Reads what {@link #print} wrote.
   *
   * @throws IllegalArgumentException if the text is not of the form ORIGIN:SEQUENCE:DIGEST
   */
  public static Head parse(String printed) {
    Matcher matcher = PRINTED.matcher(printed.strip());
    if (!matcher.matches()) {
      throw new IllegalArgumentException(
          "\"" + printed + "\" is not a head; expected ORIGIN:SEQUENCE:DIGEST");
    }
    return new Head(
        UUID.fromString(matcher.group(1)), Long.parseLong(matcher.group(2)), matcher.group(3));
  }

  /** One line to keep: {@code ORIGIN:SEQUENCE:DIGEST}. */
  public String print() {
    return origin + ":" + sequence + ":" + digest;
  }

  JsonObject toJson() {
    return JsonObject.builder()
        .put("origin", origin.toString())
        .put("sequence", sequence)
        .put("digest", digest)
        .build();
  }

  static Head from(JsonObject json) {
    return new Head(
        UUID.fromString(json.text("origin")), json.integer("sequence"), json.text("digest"));
  }
}
