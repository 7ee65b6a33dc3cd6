package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;

/**
 * Names a photo that belongs to a stage; the file itself lies beside the record.
 *
 * @param name the file's name as given
 * @param sha256 of the file's bytes, 64 lower-case hexadecimal digits
 * @param note what it shows; may be empty
 */
public record PhotoEntry(String stage, String name, String sha256, String note) implements Entry {
  public PhotoEntry {
    Texts.requireText(stage, "stage");
    Texts.requireText(name, "name");
    Texts.requireSha256(sha256, "sha256");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.PHOTO;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder()
        .put("stage", stage)
        .put("name", name)
        .put("sha256", sha256)
        .put("note", note)
        .build();
  }

  static PhotoEntry from(JsonObject body) {
    return new PhotoEntry(
        body.text("stage"), body.text("name"), body.text("sha256"), body.text("note"));
  }
}
