package datumpeg.bridge.collect;

import datumpeg.bridge.exchange.UnassignedTable;
import datumpeg.bridge.failure.OuterWorldException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where a session's values without a target go: into a table, or, while its disk takes none, into a
 * queue of at most {@value #LARGEST_WAITING} that drains in order as soon as it can. One thread.
 */
final class UnassignedStore {
  /** So many values wait at most; further ones are then not taken. */
  static final int LARGEST_WAITING = ReadingStore.LARGEST_WAITING;

  private final UnassignedTable table;
  private final WaitingFile<UnassignedTable.Row> file;
  private final Deque<UnassignedTable.Row> waiting = new ArrayDeque<>();
  private @Nullable OuterWorldException trouble;

  /**
   * A store whose queue begins with what earlier sessions left.
   *
   * @param file where what waits is kept too, so that the end of the program does not lose it
   */
  UnassignedStore(UnassignedTable table, WaitingFile<UnassignedTable.Row> file) {
    this.table = table;
    this.file = file;
    waiting.addAll(file.leftOver());
  }

  /** Stores a value behind those that wait; false if it is not taken. */
  boolean keep(UnassignedTable.Row row) {
    boolean isFirst = drain();
    if (isTableFull() || waiting.size() >= LARGEST_WAITING) {
      return false;
    }
    if (!isFirst || !isTaken(row)) {
      waiting.add(row);
      file.add(row);
    }
    return true;
  }

  /** Tries to store what waits; true if nothing waits any longer. */
  boolean drain() {
    if (waiting.isEmpty()) {
      return true;
    }
    while (!waiting.isEmpty()) {
      if (!isTaken(waiting.element())) {
        file.retry();
        return false;
      }
      waiting.remove();
    }
    file.clear();
    return true;
  }

  private boolean isTaken(UnassignedTable.Row row) {
    try {
      table.add(row);
      trouble = null;
      return true;
    } catch (OuterWorldException refused) {
      trouble = refused;
      return false;
    }
  }

  /** Whether no further row will be taken, whatever the disk does. */
  boolean isTableFull() {
    return table.rowCount() + waiting.size() >= UnassignedTable.MOST_ROWS;
  }

  int rowCount() {
    return table.rowCount();
  }

  int waitingCount() {
    return waiting.size();
  }

  /** Whether what waits would survive the end of the program. */
  boolean isWaitingOnDisk() {
    return file.isWhole();
  }

  /** The file that holds what waits, if one holds all of it. */
  Optional<Path> waitingPlace() {
    return file.place();
  }

  /** Why values wait; empty when none does. */
  Optional<OuterWorldException> trouble() {
    return Optional.ofNullable(trouble);
  }

  /** Closes the files, so that their disk can be taken out, and finds them again or others. */
  void letGo() {
    file.letGo();
    file.retry();
  }
}
