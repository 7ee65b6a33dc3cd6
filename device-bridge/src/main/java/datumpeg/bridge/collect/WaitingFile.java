package datumpeg.bridge.collect;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.json.JsonException;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.json.JsonReader;
import datumpeg.bridge.json.JsonWriter;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.EntryKind;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.VoidEntry;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The file that keeps readings which wait for the record, one JSON object a line, each forced to
 * the disk. It exists only while something waits. One thread.
 */
public final class WaitingFile {
  private static final Logger LOG = LoggerFactory.getLogger(WaitingFile.class);

  private final Path file;
  private final List<Entry> leftOver;
  private boolean whole = true;

  private WaitingFile(Path file, List<Entry> leftOver) {
    this.file = file;
    this.leftOver = List.copyOf(leftOver);
  }

  /**
   * The file of a job.
   *
   * @param log what the record holds: what waited and was stored after all is left out, so that
   *     nothing is stored twice
   */
  public static WaitingFile of(Path file, JobLog log) {
    Set<String> known =
        log.readings().stream().map(row -> row.entry().id().toString()).collect(Collectors.toSet());
    Set<String> voided = log.voidedIds().stream().map(Object::toString).collect(Collectors.toSet());
    List<Entry> left = new ArrayList<>();
    for (Entry entry : read(file)) {
      boolean stored =
          (entry instanceof ReadingEntry reading && known.contains(reading.id().toString()))
              || (entry instanceof VoidEntry withdrawn
                  && voided.contains(withdrawn.readingId().toString()));
      if (!stored) {
        left.add(entry);
      }
    }
    return new WaitingFile(file, left);
  }

  private static List<Entry> read(Path file) {
    List<Entry> entries = new ArrayList<>();
    try {
      for (String line : Files.readAllLines(file)) {
        read(line, file).ifPresent(entries::add);
      }
    } catch (NoSuchFileException e) {
      return List.of();
    } catch (IOException e) {
      throw new OuterWorldException(
          "The readings that wait in "
              + file
              + " could not be read: "
              + e.getMessage()
              + ". They are kept there.",
          e);
    }
    return entries;
  }

  /** One line; empty for a blank one, and for one cut short by the end of a program. */
  private static Optional<Entry> read(String line, Path file) {
    if (line.isBlank()) {
      return Optional.empty();
    }
    try {
      return Optional.of(entry(JsonReader.readObject(line, "a waiting reading")));
    } catch (JsonException | IllegalArgumentException e) {
      LOG.warn("a line of {} does not read and is left out: {}", file, line, e);
      return Optional.empty();
    }
  }

  private static Entry entry(JsonObject line) {
    String number = line.text("number");
    return EntryKind.ofWord(line.text("kind"))
        .orElseThrow(() -> new IllegalArgumentException("unknown kind"))
        .decode(
            JsonReader.readObject(line.text("body"), "its body"),
            number.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Double.parseDouble(number)));
  }

  /** What an earlier session left waiting, in order. */
  List<Entry> leftOver() {
    return leftOver;
  }

  /** False once an entry could not be kept here. */
  boolean isWhole() {
    return whole;
  }

  void add(Entry entry) {
    // Begins a line of its own, behind whatever a dying program left of the one before.
    String line =
        "\n"
            + JsonWriter.compact(
                JsonObject.builder()
                    .put("kind", entry.kind().word())
                    .put(
                        "number",
                        entry.number().isPresent()
                            ? Double.toString(entry.number().getAsDouble())
                            : "")
                    .put("body", JsonWriter.compact(entry.body()))
                    .build())
            + "\n";
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      ByteBuffer bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    } catch (IOException e) {
      whole = false;
      LOG.warn("{} could not be written", file, e);
    }
  }

  void clear() {
    try {
      Files.deleteIfExists(file);
      whole = true;
    } catch (IOException e) {
      LOG.warn("{} could not be removed; what it holds is stored and is not stored again", file, e);
    }
  }
}
