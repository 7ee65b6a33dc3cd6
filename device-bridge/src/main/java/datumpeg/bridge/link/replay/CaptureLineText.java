package datumpeg.bridge.link.replay;

import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonWriter;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import datumpeg.bridge.link.replay.CaptureHeader.CapturedLink;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Lines of a capture as text. */
final class CaptureLineText {
  private CaptureLineText() {}

  static String of(CaptureHeader header) {
    JsonObject.Builder links = JsonObject.builder();
    header.links().forEach((name, link) -> links.put(name, object(link)));
    return JsonWriter.compact(
        JsonObject.builder()
            .put("capture", CaptureHeader.VERSION)
            .put("job", header.job())
            .put("stage", header.stage())
            .put("links", links.build())
            .build());
  }

  private static JsonObject object(CapturedLink link) {
    JsonObject.Builder members = JsonObject.builder().put("link", link.link());
    putIfPresent(members, "meter", link.meter());
    putIfPresent(members, "profile", link.profile());
    return members.build();
  }

  static String of(CaptureEntry entry) {
    JsonObject.Builder members =
        JsonObject.builder()
            .put("n", entry.number())
            .put("t", entry.time().toString())
            .put("mono_ns", entry.monotonicNanos());
    if (entry instanceof Transfer transfer) {
      put(members, transfer);
    } else if (entry instanceof Act act) {
      put(members, act);
    }
    return JsonWriter.compact(members.build());
  }

  private static void put(JsonObject.Builder members, Transfer transfer) {
    members
        .put("link", transfer.link())
        .put("dir", word(transfer.direction()))
        .put("channel", transfer.channel())
        .put("hex", transfer.bytes().hex());
  }

  private static void put(JsonObject.Builder members, Act act) {
    members.put("act", word(act.kind()));
    putIfPresent(members, "target", act.target());
    if (act.face() != null) {
      members.put("face", act.face());
    }
    putIfPresent(members, "text", act.text());
  }

  private static void putIfPresent(
      JsonObject.Builder members, String name, @Nullable String value) {
    if (value != null) {
      members.put(name, value);
    }
  }

  /** How a direction or an act is written. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }
}
