package datumpeg.bridge.collect;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.entry.Entry;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The file that keeps what waits for the record or its table, one JSON object a line, each forced
 * to the disk, in the first of several folders that takes it: the disk of the record may be what
 * takes nothing. {@link WaitingFolder} says whose a file is. One thread.
 */
public final class WaitingFile<T> implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WaitingFile.class);

  private final List<WaitingFolder> folders;
  private final WaitingForm<T> form;
  private final List<T> leftOver;

  /** What waits of this session's own. */
  private final List<String> lines = new ArrayList<>();

  /** Where the first so many lines are. */
  private @Nullable WaitingFolder kept;

  private int keptCount;
  private int room;
  private boolean wasLetGo;
  private long order;

  private WaitingFile(
      List<WaitingFolder> folders, WaitingForm<T> form, List<T> leftOver, long order) {
    this.folders = List.copyOf(folders);
    this.form = form;
    this.leftOver = List.copyOf(leftOver);
    this.order = order;
  }

  /** The files of a stage's readings in one folder. */
  public static WaitingFile<Entry> of(Path base, Supplier<JobLog> log) {
    return of(base, SpareFolders.NONE, "", log);
  }

  /**
   * The files of a stage's readings.
   *
   * @param base the first file's name, which ends with {@code .jsonl}
   * @param spares where lines go that this folder does not take
   * @param spareName the first file's name there
   * @param log asked for what the record holds: what waited and was stored after all is left out,
   *     so that nothing is stored twice
   * @throws OuterWorldException if what an earlier session left cannot be read
   */
  public static WaitingFile<Entry> of(
      Path base, SpareFolders spares, String spareName, Supplier<JobLog> log) {
    return of(
        base,
        spares,
        spareName,
        new WaitingEntries(),
        found -> WaitingEntries.notIn(log.get(), found));
  }

  /**
   * Files of whatever form.
   *
   * @param notStored leaves out what waited and was stored after all; asked if anything was found
   */
  static <T> WaitingFile<T> of(
      Path base,
      SpareFolders spares,
      String spareName,
      WaitingForm<T> form,
      UnaryOperator<List<T>> notStored) {
    List<WaitingFolder> folders = new ArrayList<>();
    folders.add(new WaitingFolder(base));
    spares.all().forEach(spare -> folders.add(new WaitingFolder(spare, spareName)));
    List<WaitingLine<T>> found = takenOver(folders, form);
    return new WaitingFile<>(
        folders,
        form,
        found.isEmpty() ? List.of() : notStored.apply(once(found, form)),
        found.stream().mapToLong(WaitingLine::order).max().orElse(0));
  }

  private static <T> List<WaitingLine<T>> takenOver(
      List<WaitingFolder> folders, WaitingForm<T> form) {
    List<WaitingLine<T>> found = new ArrayList<>();
    for (WaitingFolder folder : folders) {
      try {
        found.addAll(folder.takeOver(form));
      } catch (IOException e) {
        folders.forEach(WaitingFolder::letGo);
        throw new OuterWorldException(
            "What waits in "
                + folder.base()
                + " could not be read: "
                + e.getMessage()
                + ". It is kept there.",
            e);
      }
    }
    found.sort(Comparator.comparingLong(WaitingLine::order));
    return found;
  }

  /** A line whose disk failed while it was forced may stand in two folders. */
  private static <T> List<T> once(List<WaitingLine<T>> found, WaitingForm<T> form) {
    Set<String> known = new HashSet<>();
    return found.stream()
        .map(WaitingLine::waiting)
        .filter(waiting -> known.add(form.identity(waiting)))
        .toList();
  }

  /** What an earlier session left waiting, in order. */
  List<T> leftOver() {
    return leftOver;
  }

  /** False while something could not be kept in any folder. */
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

  /**
   * Takes room for so many bytes on the first folder's disk, now and whenever nothing waits: so
   * that what waits finds it there when that disk is full.
   */
  void keepRoom(int bytes) {
    room = bytes;
    folders.get(0).keepRoom(bytes);
  }

  void add(T waiting) {
    // By the clock, so that the files of several sessions can be put in one order.
    order = Math.max(order + 1, TimeUnit.MILLISECONDS.toMicros(System.currentTimeMillis()));
    lines.add(new WaitingLine<>(order, waiting).text(form));
    retry();
  }

  /** Tries to write what could not be written: a disk may be another one by now, or have room. */
  void retry() {
    if (wasLetGo) {
      wasLetGo = false;
      if (kept != null && !kept.hasAll()) {
        kept = null;
        keptCount = 0;
      }
    }
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
    if (room > 0 && !lines.isEmpty()) {
      folders.get(0).keepRoom(room);
    }
    lines.clear();
    kept = null;
    keptCount = 0;
  }

  /**
   * Closes the files, so that their disk can be taken out. Where the next retry does not find them
   * again, what they held is written elsewhere: the disk may not come back.
   */
  void letGo() {
    folders.forEach(WaitingFolder::letGo);
    wasLetGo = true;
  }

  /** Gives the files up; what is in them is the next session's. */
  @Override
  public void close() {
    folders.forEach(WaitingFolder::close);
  }
}
