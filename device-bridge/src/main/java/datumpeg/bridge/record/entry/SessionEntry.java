package datumpeg.bridge.record.entry;

import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonValue;
import java.util.List;

/**
 * The first row of every chain: who opened the record, with what, and what stood in it then.
 *
 * @param operator who; may be empty
 * @param programVersion the version that wrote this chain
 * @param heads of the chains present, those that no earlier session row already named at that head:
 *     named directly or through another chain, every chain is held in place
 */
public record SessionEntry(String operator, String programVersion, List<Head> heads)
    implements Entry {
  public SessionEntry {
    Texts.requireText(programVersion, "programVersion");
    heads = List.copyOf(heads);
  }

  @Override
  public EntryKind kind() {
    return EntryKind.SESSION;
  }

  @Override
  public JsonObject body() {
    return JsonObject.builder()
        .put("operator", operator)
        .put("programVersion", programVersion)
        .put("heads", JsonArray.of(heads.stream().map(Head::toJson)))
        .build();
  }

  static SessionEntry from(JsonObject body) {
    return new SessionEntry(
        body.text("operator"),
        body.text("programVersion"),
        body.array("heads").stream().map(SessionEntry::head).toList());
  }

  private static Head head(JsonValue value) {
    if (value instanceof JsonObject object) {
      return Head.from(object);
    }
    throw new JsonException("A head is " + value.describe() + "; expected an object.");
  }
}
