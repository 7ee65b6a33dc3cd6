package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;

/**
 * A meter profile readings of the job were taken with, whole: what it said then is what counts,
 * whatever becomes of its file.
 *
 * @param id the profile's name
 * @param sha256 its digest, as captures name it
 * @param toml the profile as the text of a file
 */
public record ProfileEntry(String id, String sha256, String toml) implements Entry {
  public ProfileEntry {
    Texts.requireText(id, "id");
    Texts.requireSha256(sha256, "sha256");
    Texts.requireText(toml, "toml");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.PROFILE;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder().put("id", id).put("sha256", sha256).put("toml", toml).build();
  }

  static ProfileEntry from(JsonObject body) {
    return new ProfileEntry(body.text("id"), body.text("sha256"), body.text("toml"));
  }
}
