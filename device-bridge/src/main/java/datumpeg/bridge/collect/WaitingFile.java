package datumpeg.bridge.collect;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.entry.Entry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.VoidEntry;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The file that keeps readings which wait for the record, one JSON object a line, each forced to
 * the disk. It exists only while something waits, in the first of several folders that takes it:
 * the disk of the record may be what takes nothing. {@link WaitingFolder} says whose a file is. One
 * thread.
 */
public final class WaitingFile implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WaitingFile.class);

  private final List<WaitingFolder> folders;
  private final List<Entry> leftOver;

  /** What waits of this session's own. */
  private final List<String> lines = new ArrayList<>();

  /** Where the first so many lines are. */
  private @Nullable WaitingFolder kept;

  private int keptCount;
  private long order;

  private WaitingFile(List<WaitingFolder> folders, List<Entry> leftOver, long order) {
    this.folders = List.copyOf(folders);
    this.leftOver = List.copyOf(leftOver);
    this.order = order;
  }

  /** The files of a stage in one folder. */
  public static WaitingFile of(Path base, Supplier<JobLog> log) {
    return of(base, SpareFolders.NONE, "", log);
  }

  /**
   * The files of a stage.
   *
   * @param base the first file's name, which ends with {@code .jsonl}
   * @param spares where lines go that this folder does not take
   * @param spareName the first file's name there
   * @param log asked for what the record holds: what waited and was stored after all is left out,
   *     so that nothing is stored twice
   * @throws OuterWorldException if what an earlier session left cannot be read
   */
  public static WaitingFile of(
      Path base, SpareFolders spares, String spareName, Supplier<JobLog> log) {
    List<WaitingFolder> folders = new ArrayList<>();
    folders.add(new WaitingFolder(base));
    spares.all().forEach(spare -> folders.add(new WaitingFolder(spare, spareName)));
    List<WaitingLine> found = new ArrayList<>();
    for (WaitingFolder folder : folders) {
      try {
        found.addAll(folder.takeOver());
      } catch (IOException e) {
        folders.forEach(WaitingFolder::letGo);
        throw new OuterWorldException(
            "The readings that wait in "
                + folder.base()
                + " could not be read: "
                + e.getMessage()
                + ". They are kept there.",
            e);
      }
    }
    found.sort(WaitingLine.IN_ORDER);
    List<Entry> left = found.isEmpty() ? List.of() : notIn(log.get(), once(found));
    return new WaitingFile(
        folders, left, found.stream().mapToLong(WaitingLine::order).max().orElse(0));
  }

  /** A line whose disk failed while it was forced may stand in two folders. */
  private static List<Entry> once(List<WaitingLine> found) {
    Set<String> bodies = new HashSet<>();
    return found.stream().filter(line -> bodies.add(line.body())).map(WaitingLine::entry).toList();
  }

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

  /** What an earlier session left waiting, in order. */
  List<Entry> leftOver() {
    return leftOver;
  }

  /** False while an entry could not be kept in any folder. */
  boolean isWhole() {
    return keptCount == lines.size();
  }

  /**
   * The file that keeps what waits of this session, or, where that is nothing, the first that keeps
   * what an earlier one left; empty where something is kept in none.
   */
  Optional<Path> place() {
    if (!isWhole()) {
      return Optional.empty();
    }
    return kept != null
        ? kept.file()
        : folders.stream().flatMap(folder -> folder.file().stream()).findFirst();
  }

  void add(Entry entry) {
    // By the clock, so that the files of several sessions can be put in one order.
    order = Math.max(order + 1, TimeUnit.MILLISECONDS.toMicros(System.currentTimeMillis()));
    lines.add(new WaitingLine(order, entry).text());
    retry();
  }

  /** Tries to write what could not be written: a disk may be another one by now, or have room. */
  void retry() {
    if (isWhole() || isWritten(kept, keptCount)) {
      return;
    }
    // What the folder has taken so far is written again elsewhere: its disk may not come back.
    kept = null;
    keptCount = 0;
    for (WaitingFolder folder : folders) {
      if (isWritten(folder, 0)) {
        return;
      }
    }
  }

  private boolean isWritten(@Nullable WaitingFolder folder, int from) {
    if (folder == null) {
      return false;
    }
    try {
      folder.write(lines.subList(from, lines.size()));
      kept = folder;
      keptCount = lines.size();
      return true;
    } catch (IOException e) {
      LOG.debug("{} could not be written", folder.base(), e);
      return false;
    }
  }

  /** All that waited is stored. */
  void clear() {
    folders.forEach(WaitingFolder::clear);
    lines.clear();
    kept = null;
    keptCount = 0;
  }

  /**
   * Closes the files, so that their disk can be taken out. What they hold is written again by the
   * next retry: the disk may not come back.
   */
  void letGo() {
    folders.forEach(WaitingFolder::letGo);
    kept = null;
    keptCount = 0;
  }

  /** Gives the files up; what is in them is the next session's. */
  @Override
  public void close() {
    folders.forEach(WaitingFolder::letGo);
  }
}
