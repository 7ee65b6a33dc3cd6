package datumpeg.bridge.collect;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonWriter;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.EntryKind;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An entry that waits, as one line of a file.
 *
 * @param order grows from line to line, whichever file each of them went to
 */
record WaitingLine(long order, Entry entry) {
  static final Comparator<WaitingLine> IN_ORDER = Comparator.comparingLong(WaitingLine::order);

  /** Begins a line of its own, behind whatever a dying program left of the one before. */
  String text() {
    return "\n"
        + JsonWriter.compact(
            JsonObject.builder()
                .put("kind", entry.kind().word())
                .put("order", Long.toString(order))
                .put(
                    "number",
                    entry.number().isPresent() ? Double.toString(entry.number().getAsDouble()) : "")
                .put("body", body())
                .build())
        + "\n";
  }

  /** What makes two lines the same entry. */
  String body() {
    return JsonWriter.compact(entry.body());
  }

  /** Empty for a blank line. */
  static Optional<WaitingLine> read(String line) throws JsonException {
    if (line.isBlank()) {
      return Optional.empty();
    }
    JsonObject read = JsonReader.readObject(line, "a waiting reading");
    String number = read.text("number");
    Entry entry =
        EntryKind.ofWord(read.text("kind"))
            .orElseThrow(() -> new IllegalArgumentException("unknown kind"))
            .decode(
                JsonReader.readObject(read.text("body"), "its body"),
                number.isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(Double.parseDouble(number)));
    // Earlier versions wrote no order, and one file only.
    String order = read.members().containsKey("order") ? read.text("order") : "0";
    return Optional.of(new WaitingLine(Long.parseLong(order), entry));
  }
}
