package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;

/**
 * Someone closes the hold point of a stage.
 *
 * @param by who signs, as typed
 * @param statement what is signed, item by item; may be empty for a stage without items
 */
public record SignatureEntry(String stage, String by, String statement) implements Entry {
  public SignatureEntry {
    Texts.requireText(stage, "stage");
    Texts.requireText(by, "by");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.SIGNATURE;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder()
        .put("stage", stage)
        .put("by", by)
        .put("statement", statement)
        .build();
  }

  static SignatureEntry from(JsonObject body) {
    return new SignatureEntry(body.text("stage"), body.text("by"), body.text("statement"));
  }
}
