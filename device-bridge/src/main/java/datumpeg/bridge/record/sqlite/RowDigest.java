package datumpeg.bridge.record.sqlite;

import datumpeg.bridge.json.CanonicalJson;
import datumpeg.bridge.json.JsonObject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The digest of a row: SHA-256 (FIPS 180-4) of the canonical form of its columns. One thread. */
final class RowDigest {
  /** What the first row of a chain names as the row before it. */
  static final String NO_PREVIOUS = "0".repeat(64);

  private final MessageDigest sha256;

  RowDigest() {
    try {
      sha256 = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /**
   * @throws IllegalArgumentException if the row has no canonical form
   */
  String of(Row row) {
    byte[] bytes = canonicalText(row).getBytes(StandardCharsets.UTF_8);
    return HexFormat.of().formatHex(sha256.digest(bytes));
  }

  /** What the digest is taken of. The body goes in as a text, whatever stands in it. */
  static String canonicalText(Row row) {
    return CanonicalJson.text(
        JsonObject.builder()
            .put("at", row.at())
            .put("body", row.body())
            .put("job", row.job())
            .put("kind", row.kind())
            .put("organisation", row.organisation())
            .put("origin", row.origin())
            .put("previous", row.previous())
            .put("sequence", row.sequence())
            .build());
  }

  /** The columns the digest covers, as they stand. */
  record Row(
      String organisation,
      String job,
      String kind,
      String origin,
      long sequence,
      String at,
      String body,
      String previous) {

    Row withSequence(long other) {
      return new Row(organisation, job, kind, origin, other, at, body, previous);
    }
  }
}
