package datumpeg.bridge.collect;

import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonWriter;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.EntryKind;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.VoidEntry;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Rows of the record that wait for it. Immutable. */
final class WaitingEntries implements WaitingForm<Entry> {

  /** Those of the entries that a job's log does not hold, in their order. */
  static List<Entry> notIn(JobLog log, List<Entry> entries) {
    Set<String> known =
        log.readings().stream().map(row -> row.entry().id().toString()).collect(Collectors.toSet());
    Set<String> voided = log.voidedIds().stream().map(Object::toString).collect(Collectors.toSet());
    return entries.stream()
        .filter(
            entry ->
                !(entry instanceof ReadingEntry reading && known.contains(reading.id().toString()))
                    && !(entry instanceof VoidEntry withdrawn
                        && voided.contains(withdrawn.readingId().toString())))
        .toList();
  }

  @Override
  public JsonObject.Builder written(Entry entry) {
    return JsonObject.builder()
        .put("kind", entry.kind().word())
        .put(
            "number",
            entry.number().isPresent() ? Double.toString(entry.number().getAsDouble()) : "")
        .put("body", identity(entry));
  }

  @Override
  public String identity(Entry entry) {
    return JsonWriter.compact(entry.body());
  }

  @Override
  public Entry read(JsonObject line) throws JsonException {
    String number = line.text("number");
    return EntryKind.ofWord(line.text("kind"))
        .orElseThrow(() -> new IllegalArgumentException("unknown kind"))
        .decode(
            JsonReader.readObject(line.text("body"), "its body"),
            number.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Double.parseDouble(number)));
  }
}
