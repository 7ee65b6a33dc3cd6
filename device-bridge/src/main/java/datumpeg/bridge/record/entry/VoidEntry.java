package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonObject;
import java.util.UUID;

/**
 * Withdraws a reading. It cannot be withdrawn itself, and the reading need not be present: it may
 * arrive later from another record.
 *
 * @param why never blank
 */
public record VoidEntry(UUID readingId, String why) implements Entry {
  public VoidEntry {
    Texts.requireText(why, "why");
  }

  @Override
  public EntryKind kind() {
    return EntryKind.VOID;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder().put("reading", readingId.toString()).put("why", why).build();
  }

  static VoidEntry from(JsonObject body) {
    return new VoidEntry(UUID.fromString(body.text("reading")), body.text("why"));
  }
}
