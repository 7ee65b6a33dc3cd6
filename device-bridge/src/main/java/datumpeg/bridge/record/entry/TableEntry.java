package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;

/**
 * Says that a table of readings was entered, so that the same file is not entered twice unawares.
 *
 * @param name the file's name as given
 * @param sha256 of the file's bytes, 64 lower-case hexadecimal digits
 */
public record TableEntry(String name, String sha256) implements Entry {
  public TableEntry {
    Texts.requireText(name, "name");
    Texts.requireSha256(sha256, "sha256");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.TABLE;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder().put("name", name).put("sha256", sha256).build();
  }

  static TableEntry from(JsonObject body) {
    return new TableEntry(body.text("name"), body.text("sha256"));
  }
}
