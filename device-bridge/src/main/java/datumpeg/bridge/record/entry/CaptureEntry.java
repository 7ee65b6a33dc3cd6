package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;

/**
 * Names a capture of raw bytes by its digest.
 *
 * @param name the file's name as given
 * @param sha256 of the file's bytes, 64 lower-case hexadecimal digits
 * @param stage the stage it was taken in
 */
public record CaptureEntry(String name, String sha256, String stage) implements Entry {
  public CaptureEntry {
    Texts.requireText(name, "name");
    Texts.requireSha256(sha256, "sha256");
    Texts.requireText(stage, "stage");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.CAPTURE;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder().put("name", name).put("sha256", sha256).put("stage", stage).build();
  }

  static CaptureEntry from(JsonObject body) {
    return new CaptureEntry(body.text("name"), body.text("sha256"), body.text("stage"));
  }
}
