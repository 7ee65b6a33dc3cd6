package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;

/**
 * Says that something was moved, which starts that thing's next round.
 *
 * @param thing the canonical text of what was moved, for example {@code column.A3}
 * @param why never blank
 */
public record MovedEntry(String thing, String why) implements Entry {
  public MovedEntry {
    Texts.requireText(thing, "thing");
    Texts.requireText(why, "why");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.MOVED;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder().put("thing", thing).put("why", why).build();
  }

  static MovedEntry from(JsonObject body) {
    return new MovedEntry(body.text("thing"), body.text("why"));
  }
}
