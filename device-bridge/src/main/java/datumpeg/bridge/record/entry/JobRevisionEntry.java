package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * One revision of a job file, whole.
 *
 * @param revision from 1
 * @param name the job's name, for lists; may be empty
 * @param toml the file's text, from which its bytes (UTF-8) can be had back
 * @param sha256 of those bytes, 64 lower-case hexadecimal digits
 */
public record JobRevisionEntry(int revision, String name, String toml, String sha256)
    implements Entry {
  public JobRevisionEntry {
    if (revision < 1) {
      throw new IllegalArgumentException("revision is " + revision + "; expected 1 or more");
    }
    Texts.requireSha256(sha256, "sha256");
    if (!sha256.equals(sha256Of(toml))) {
      throw new IllegalArgumentException("sha256 is not the digest of the job file's text");
    }
  }

  public static JobRevisionEntry of(int revision, String name, String toml) {
    return new JobRevisionEntry(revision, name, toml, sha256Of(toml));
  }

  /** SHA-256 of the text's UTF-8 bytes, 64 lower-case hexadecimal digits. */
  public static String sha256Of(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  @Override
  public EntryKind kind() {
    return EntryKind.JOB_REVISION;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder()
        .put("revision", revision)
        .put("name", name)
        .put("toml", toml)
        .put("sha256", sha256)
        .build();
  }

  static JobRevisionEntry from(JsonObject body) {
    return new JobRevisionEntry(
        body.smallInteger("revision"), body.text("name"), body.text("toml"), body.text("sha256"));
  }
}
