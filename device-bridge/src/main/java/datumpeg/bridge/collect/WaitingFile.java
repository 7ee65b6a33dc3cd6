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
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The file that keeps readings which wait for the record, one JSON object a line, each forced to
 * the disk. It exists only while something waits.
 *
 * <p>Each session has one of its own and holds a lock on it; a session that begins takes over the
 * files of its stage that nobody holds, those of programs that died. A file is emptied before it is
 * removed, under its lock: who opened it before and gets the lock afterwards finds nothing in it. A
 * process loses the lock when it closes the file by another way, so within one process only one
 * session of a stage may run. One thread.
 */
public final class WaitingFile implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WaitingFile.class);
  private static final int MOST_FILES = 100;

  private final Path base;
  private final List<Held> takenOver;
  private final List<Entry> leftOver;
  private final Deque<String> unwritten = new ArrayDeque<>();
  private @Nullable Held own;

  private WaitingFile(Path base, List<Held> takenOver, List<Entry> leftOver) {
    this.base = base;
    this.takenOver = new ArrayList<>(takenOver);
    this.leftOver = List.copyOf(leftOver);
  }

  /** A file under this session's lock. */
  private record Held(Path path, FileChannel channel) {}

  /**
   * The files of a stage.
   *
   * @param base the first file's name, which ends with {@code .jsonl}
   * @param log asked for what the record holds: what waited and was stored after all is left out,
   *     so that nothing is stored twice
   */
  public static WaitingFile of(Path base, Supplier<JobLog> log) {
    List<Held> takenOver = new ArrayList<>();
    List<Entry> entries = new ArrayList<>();
    try {
      for (int number = 1; number <= MOST_FILES; number++) {
        takeOver(named(base, number), takenOver, entries);
      }
    } catch (IOException e) {
      takenOver.forEach(WaitingFile::close);
      throw new OuterWorldException(
          "The readings that wait in "
              + base
              + " could not be read: "
              + e.getMessage()
              + ". They are kept there.",
          e);
    }
    return new WaitingFile(base, takenOver, entries.isEmpty() ? entries : left(entries, log.get()));
  }

  private static void takeOver(Path path, List<Held> takenOver, List<Entry> entries)
      throws IOException {
    if (!Files.exists(path)) {
      return;
    }
    FileChannel channel = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
    Held held = new Held(path, channel);
    if (isLocked(channel) && channel.size() > 0) {
      String text =
          new String(Channels.newInputStream(channel).readAllBytes(), StandardCharsets.UTF_8);
      text.lines().forEach(line -> read(line, path).ifPresent(entries::add));
      takenOver.add(held);
    } else {
      close(held);
    }
  }

  private static boolean isLocked(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException heldHere) {
      return false;
    }
  }

  private static Path named(Path base, int number) {
    String name = base.toFile().getName();
    return number == 1
        ? base
        : base.resolveSibling(name.replaceFirst("\\.jsonl$", "." + number + ".jsonl"));
  }

  private static List<Entry> left(List<Entry> entries, JobLog log) {
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

  /** False while an entry could not be kept here. */
  boolean isWhole() {
    return unwritten.isEmpty();
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
    unwritten.add(line);
    retry();
  }

  /** Tries to write what could not be written: the disk may be another one by now, or have room. */
  void retry() {
    try {
      while (!unwritten.isEmpty()) {
        write(unwritten.element());
        unwritten.remove();
      }
    } catch (IOException e) {
      LOG.debug("{} could not be written", base, e);
    }
  }

  private void write(String line) throws IOException {
    FileChannel channel = own().channel();
    channel.position(channel.size());
    ByteBuffer bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.UTF_8));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
    channel.force(true);
  }

  private Held own() throws IOException {
    Held held = own;
    for (int number = 1; held == null && number <= MOST_FILES; number++) {
      held = make(named(base, number));
    }
    if (held == null) {
      throw new IOException("there are " + MOST_FILES + " files beside it already");
    }
    own = held;
    return held;
  }

  /** Null where there is such a file, or another session was quicker to take it over. */
  private static @Nullable Held make(Path path) throws IOException {
    if (Files.exists(path)) {
      return null;
    }
    FileChannel channel =
        FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    if (isLocked(channel)) {
      return new Held(path, channel);
    }
    channel.close();
    return null;
  }

  /** All that waited is stored. */
  void clear() {
    takenOver.forEach(WaitingFile::remove);
    takenOver.clear();
    Held mine = own;
    own = null;
    if (mine != null) {
      remove(mine);
    }
    unwritten.clear();
  }

  private static void remove(Held held) {
    try (FileChannel channel = held.channel()) {
      channel.truncate(0);
      Files.deleteIfExists(held.path());
    } catch (IOException e) {
      LOG.warn("{} could not be removed; it is empty or its rows are stored", held.path(), e);
    }
  }

  private static void close(Held held) {
    try {
      held.channel().close();
    } catch (IOException e) {
      LOG.warn("{} could not be closed", held.path(), e);
    }
  }

  /** Gives the files up; what is in them is the next session's. */
  @Override
  public void close() {
    takenOver.forEach(WaitingFile::close);
    if (own != null) {
      close(own);
    }
  }
}
