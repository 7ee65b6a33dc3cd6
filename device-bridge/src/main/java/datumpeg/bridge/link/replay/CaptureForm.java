package datumpeg.bridge.link.replay;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureEntry.Direction;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import datumpeg.bridge.link.replay.CaptureHeader.CapturedLink;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Lines of a capture to and from their text. */
final class CaptureForm {
  private CaptureForm() {}

  static String text(CaptureHeader header) {
    Map<String, Object> links = new LinkedHashMap<>();
    header.links().forEach((name, link) -> links.put(name, members(link)));
    Map<String, Object> members = new LinkedHashMap<>();
    members.put("capture", CaptureHeader.VERSION);
    members.put("job", header.job());
    members.put("stage", header.stage());
    members.put("links", links);
    return JsonLine.write(members);
  }

  private static Map<String, Object> members(CapturedLink link) {
    Map<String, Object> members = new LinkedHashMap<>();
    members.put("link", link.link());
    putIfPresent(members, "meter", link.meter());
    putIfPresent(members, "profile", link.profile());
    return members;
  }

  static String text(CaptureEntry entry) {
    Map<String, Object> members = new LinkedHashMap<>();
    members.put("n", entry.number());
    members.put("t", entry.time().toString());
    members.put("mono_ns", entry.monotonicNanos());
    if (entry instanceof Transfer transfer) {
      members.put("link", transfer.link());
      members.put("dir", word(transfer.direction()));
      members.put("channel", transfer.channel());
      members.put("hex", transfer.bytes().hex());
    } else if (entry instanceof Act act) {
      members.put("act", word(act.kind()));
      putIfPresent(members, "target", act.target());
      putIfPresent(members, "face", act.face());
      putIfPresent(members, "text", act.text());
    }
    return JsonLine.write(members);
  }

  private static void putIfPresent(
      Map<String, Object> members, String name, @Nullable Object value) {
    if (value != null) {
      members.put(name, value);
    }
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  /**
   * Reads the first line.
   *
   * @throws IOException whose message says what is wrong with it
   */
  static CaptureHeader header(String text) throws IOException {
    Members members = new Members(JsonLine.read(text));
    long version = members.number("capture");
    if (version != CaptureHeader.VERSION) {
      throw new IOException(
          "it is a capture of form %d; this program reads form %d"
              .formatted(version, CaptureHeader.VERSION));
    }
    Map<String, CapturedLink> links = new LinkedHashMap<>();
    for (Map.Entry<String, Object> link : members.object("links").entrySet()) {
      if (!(link.getValue() instanceof Map<?, ?> inner)) {
        throw new IOException("link '" + link.getKey() + "' is not an object");
      }
      links.put(link.getKey(), capturedLink(new Members(inner)));
    }
    CaptureHeader header = new CaptureHeader(members.string("job"), members.string("stage"), links);
    members.refuseOthers();
    return header;
  }

  private static CapturedLink capturedLink(Members members) throws IOException {
    CapturedLink link =
        new CapturedLink(
            members.string("link"),
            members.stringIfPresent("meter"),
            members.stringIfPresent("profile"));
    members.refuseOthers();
    return link;
  }

  /**
   * Reads a line below the first.
   *
   * @throws IOException whose message says what is wrong with it
   */
  static CaptureEntry entry(String text) throws IOException {
    Members members = new Members(JsonLine.read(text));
    long number = members.number("n");
    Instant time = time(members.string("t"));
    long monotonicNanos = members.number("mono_ns");
    CaptureEntry entry =
        members.has("act")
            ? act(members, number, time, monotonicNanos)
            : transfer(members, number, time, monotonicNanos);
    members.refuseOthers();
    return entry;
  }

  private static Transfer transfer(Members members, long number, Instant time, long nanos)
      throws IOException {
    String link = members.string("link");
    Direction direction = constant(Direction.values(), "dir", members.string("dir"));
    String channel = members.stringIfPresent("channel");
    return new Transfer(
        number,
        time,
        nanos,
        link,
        direction,
        channel == null ? Chunk.ONLY_CHANNEL : channel,
        bytes(members.string("hex")));
  }

  private static Act act(Members members, long number, Instant time, long nanos)
      throws IOException {
    Kind kind = constant(Kind.values(), "act", members.string("act"));
    String target = members.stringIfPresent("target");
    Integer face = members.has("face") ? face(members.number("face")) : null;
    return new Act(number, time, nanos, kind, target, face, members.stringIfPresent("text"));
  }

  private static Integer face(long face) throws IOException {
    if (face != 1 && face != 2) {
      throw new IOException("'face' is " + face + "; expected 1 or 2");
    }
    return (int) face;
  }

  private static Bytes bytes(String hex) throws IOException {
    try {
      Bytes bytes = Bytes.ofHex(hex);
      if (bytes.isEmpty()) {
        throw new IOException("'hex' is empty; expected at least one byte");
      }
      return bytes;
    } catch (IllegalArgumentException notHex) {
      throw new IOException("'hex' is not pairs of hexadecimal digits: '" + hex + "'", notHex);
    }
  }

  private static Instant time(String text) throws IOException {
    try {
      return Instant.parse(text);
    } catch (DateTimeException notATime) {
      throw new IOException(
          "'t' is '" + text + "'; expected a time such as 2026-03-02T08:15:00Z", notATime);
    }
  }

  private static <E extends Enum<E>> E constant(E[] constants, String name, String word)
      throws IOException {
    StringBuilder expected = new StringBuilder();
    for (E constant : constants) {
      if (word(constant).equals(word)) {
        return constant;
      }
      expected.append(expected.isEmpty() ? "" : ", ").append(word(constant));
    }
    throw new IOException("'" + name + "' is '" + word + "'; expected one of " + expected);
  }

  /** The members of one object; each is taken once, what is left over is refused. */
  private static final class Members {
    private final Map<String, Object> left = new LinkedHashMap<>();

    Members(Map<?, ?> object) {
      object.forEach((name, value) -> left.put(String.valueOf(name), value));
    }

    boolean has(String name) {
      return left.containsKey(name);
    }

    String string(String name) throws IOException {
      String value = stringIfPresent(name);
      if (value == null) {
        throw new IOException("'" + name + "' is missing");
      }
      return value;
    }

    @Nullable String stringIfPresent(String name) throws IOException {
      Object value = left.remove(name);
      if (value != null && !(value instanceof String)) {
        throw new IOException("'" + name + "' is not a string");
      }
      return (String) value;
    }

    long number(String name) throws IOException {
      Object value = left.remove(name);
      if (value instanceof Long number) {
        return number;
      }
      throw new IOException(
          "'" + name + "' is " + (value == null ? "missing" : "not a whole number"));
    }

    Map<String, Object> object(String name) throws IOException {
      if (left.remove(name) instanceof Map<?, ?> object) {
        Map<String, Object> named = new LinkedHashMap<>();
        object.forEach((key, value) -> named.put(String.valueOf(key), value));
        return named;
      }
      throw new IOException("'" + name + "' is missing or not an object");
    }

    void refuseOthers() throws IOException {
      if (!left.isEmpty()) {
        throw new IOException("unknown key '" + left.keySet().iterator().next() + "'");
      }
    }
  }
}
