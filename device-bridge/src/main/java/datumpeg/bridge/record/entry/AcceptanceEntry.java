package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;

/**
 * Someone takes an item of a stage as it is.
 *
 * @param item the item's key, such as {@code slab-square A1}
 * @param found how the item stood then
 * @param by who accepts it, as typed
 * @param reference the engineer's reference
 * @param why never blank
 */
public record AcceptanceEntry(
    String stage, String item, String found, String by, String reference, String why)
    implements Entry {
  public AcceptanceEntry {
    Texts.requireText(stage, "stage");
    Texts.requireText(item, "item");
    Texts.requireText(found, "found");
    Texts.requireText(by, "by");
    Texts.requireText(reference, "reference");
    Texts.requireText(why, "why");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.ACCEPTANCE;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder()
        .put("stage", stage)
        .put("item", item)
        .put("found", found)
        .put("by", by)
        .put("reference", reference)
        .put("why", why)
        .build();
  }

  static AcceptanceEntry from(JsonObject body) {
    return new AcceptanceEntry(
        body.text("stage"),
        body.text("item"),
        body.text("found"),
        body.text("by"),
        body.text("reference"),
        body.text("why"));
  }
}
