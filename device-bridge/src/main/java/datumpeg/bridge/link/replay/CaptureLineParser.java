package datumpeg.bridge.link.replay;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.json.JsonValue;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureEntry.Direction;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import datumpeg.bridge.link.replay.CaptureHeader.CapturedLink;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/** Lines of a capture from their text. */
final class CaptureLineParser {
  private CaptureLineParser() {}

  static CaptureHeader header(String line) throws CaptureDamage {
    LineMembers members = LineMembers.of(line);
    long version = members.number("capture");
    if (version != CaptureHeader.VERSION) {
      throw new CaptureDamage(
          "'capture' is %d; this program reads form %d".formatted(version, CaptureHeader.VERSION));
    }
    CaptureHeader header =
        new CaptureHeader(members.text("job"), members.text("stage"), links(members));
    members.refuseOthers();
    return header;
  }

  private static Map<String, CapturedLink> links(LineMembers members) throws CaptureDamage {
    Map<String, CapturedLink> links = new LinkedHashMap<>();
    for (Map.Entry<String, JsonValue> link : members.object("links").members().entrySet()) {
      LineMembers inner = new LineMembers(LineMembers.object(link.getKey(), link.getValue()));
      links.put(
          link.getKey(),
          new CapturedLink(
              inner.text("link"), inner.textIfPresent("meter"), inner.textIfPresent("profile")));
      inner.refuseOthers();
    }
    return links;
  }

  static CaptureEntry entry(String line) throws CaptureDamage {
    LineMembers members = LineMembers.of(line);
    long number = members.number("n");
    Instant time = time(members.text("t"));
    long monotonicNanos = members.number("mono_ns");
    CaptureEntry entry =
        members.has("act")
            ? act(members, number, time, monotonicNanos)
            : transfer(members, number, time, monotonicNanos);
    members.refuseOthers();
    return entry;
  }

  private static Transfer transfer(
      LineMembers members, long number, Instant time, long monotonicNanos) throws CaptureDamage {
    String link = members.text("link");
    Direction direction = constant(Direction.values(), "dir", members.text("dir"));
    String channel = members.textIfPresent("channel");
    return new Transfer(
        number,
        time,
        monotonicNanos,
        link,
        direction,
        channel == null ? Chunk.ONLY_CHANNEL : channel,
        bytes(members.text("hex")));
  }

  private static Act act(LineMembers members, long number, Instant time, long monotonicNanos)
      throws CaptureDamage {
    Kind kind = constant(Kind.values(), "act", members.text("act"));
    String target = members.textIfPresent("target");
    Integer face = members.has("face") ? face(members.number("face")) : null;
    return new Act(number, time, monotonicNanos, kind, target, face, members.textIfPresent("text"));
  }

  private static Integer face(long face) throws CaptureDamage {
    if (face != 1 && face != 2) {
      throw new CaptureDamage("'face' is " + face + "; expected 1 or 2");
    }
    return (int) face;
  }

  private static Bytes bytes(String hex) throws CaptureDamage {
    try {
      Bytes bytes = Bytes.ofHex(hex);
      if (bytes.isEmpty()) {
        throw new CaptureDamage("'hex' is empty; expected at least one byte");
      }
      return bytes;
    } catch (IllegalArgumentException notHex) {
      throw new CaptureDamage("'hex' is not pairs of hexadecimal digits: '" + hex + "'", notHex);
    }
  }

  private static Instant time(String text) throws CaptureDamage {
    try {
      return Instant.parse(text);
    } catch (DateTimeException notATime) {
      throw new CaptureDamage(
          "'t' is '" + text + "'; expected a time such as 2026-03-02T08:15:00Z", notATime);
    }
  }

  private static <E extends Enum<E>> E constant(E[] constants, String name, String word)
      throws CaptureDamage {
    StringBuilder expected = new StringBuilder();
    for (E constant : constants) {
      if (CaptureLineText.word(constant).equals(word)) {
        return constant;
      }
      expected.append(expected.isEmpty() ? "" : ", ").append(CaptureLineText.word(constant));
    }
    throw new CaptureDamage("'" + name + "' is '" + word + "'; expected one of " + expected);
  }
}
