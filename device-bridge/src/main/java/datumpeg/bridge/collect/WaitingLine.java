package datumpeg.bridge.collect;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonWriter;
import java.util.Optional;

/**
 * What waits, as one line of a file.
 *
 * @param order grows from line to line, whichever file each of them went to
 */
record WaitingLine<T>(long order, T waiting) {

  /** Begins a line of its own, behind whatever a dying program left of the one before. */
  String text(WaitingForm<T> form) {
    return "\n"
        + JsonWriter.compact(form.written(waiting).put("order", Long.toString(order)).build())
        + "\n";
  }

  /** Empty for a blank line. */
  static <T> Optional<WaitingLine<T>> read(String line, WaitingForm<T> form) throws JsonException {
    if (line.isBlank()) {
      return Optional.empty();
    }
    JsonObject read = JsonReader.readObject(line, "what waits");
    // Earlier versions wrote no order, and one file only.
    String order = read.members().containsKey("order") ? read.text("order") : "0";
    return Optional.of(new WaitingLine<>(Long.parseLong(order), form.read(read)));
  }
}
