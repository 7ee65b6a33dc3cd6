package datumpeg.bridge.collect;

import datumpeg.bridge.collect.SpareFolders.Spare;
import datumpeg.bridge.json.JsonException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The files of a stage in one folder, one for each session in which something waits.
 *
 * <p>A session holds a lock on its file; a session that begins takes over the files that nobody
 * holds, those of programs that died. A file is emptied before it is removed, under its lock: who
 * opened it before and gets the lock afterwards finds nothing in it. A process loses the lock when
 * it closes the file by another way, so within one process only one session of a stage may run. One
 * thread.
 */
final class WaitingFolder {
  private static final Logger LOG = LoggerFactory.getLogger(WaitingFolder.class);
  private static final int MOST_FILES = 100;

  private final Path base;
  private final @Nullable Spare spare;

  /** Those of sessions that died, and this session's own on a disk that did not let them go. */
  private final List<HeldFile> takenOver = new ArrayList<>();

  private boolean keepsRoom;
  private @Nullable HeldFile own;

  /**
   * A folder nothing was done with yet.
   *
   * @param base the first file's name, which ends with {@code .jsonl}
   */
  WaitingFolder(Path base) {
    this.base = base;
    this.spare = null;
  }

  /** The same in a folder that is made when it is needed. */
  WaitingFolder(Spare spare, String name) {
    this.base = spare.folder().resolve(name);
    this.spare = spare;
  }

  /** The first of the folder's files. */
  Path base() {
    return base;
  }

  /** The file of this session's own, else the first it took over; empty where there is none. */
  Optional<Path> file() {
    return own != null && own.hasLines()
        ? Optional.of(own.path())
        : takenOver.stream().filter(HeldFile::hasLines).map(HeldFile::path).findFirst();
  }

  /** Takes over what sessions that died have left; what is in it, each file in its order. */
  <T> List<WaitingLine<T>> takeOver(WaitingForm<T> form) throws IOException {
    List<WaitingLine<T>> lines = new ArrayList<>();
    if (spare != null && !spare.isOurs()) {
      return lines;
    }
    for (int number = 1; number <= MOST_FILES; number++) {
      HeldFile held = HeldFile.find(named(number)).orElse(null);
      if (held != null) {
        String text = held.text();
        if (!text.isBlank() || !held.isRemoved()) {
          text.lines().forEach(line -> read(line, held.path(), form).ifPresent(lines::add));
          takenOver.add(held);
        }
      }
    }
    return lines;
  }

  /** One line; empty for a blank one, and for one cut short by the end of a program. */
  private static <T> Optional<WaitingLine<T>> read(String line, Path file, WaitingForm<T> form) {
    try {
      return WaitingLine.read(line, form);
    } catch (JsonException | IllegalArgumentException e) {
      LOG.warn("a line of {} does not read and is left out: {}", file, line, e);
      return Optional.empty();
    }
  }

  private Path named(int number) {
    String name = base.toFile().getName();
    return number == 1
        ? base
        : base.resolveSibling(name.replaceFirst("\\.jsonl$", "." + number + ".jsonl"));
  }

  /** Takes room for so many bytes of lines, where the disk gives it; it stays when they go. */
  void keepRoom(int bytes) {
    keepsRoom = true;
    if (own == null) {
      try {
        own().makeRoom(bytes);
      } catch (IOException refused) {
        LOG.debug("no room is kept in {}", base, refused);
        removeOwn();
      }
    }
  }

  /** Adds lines to this session's file and forces them to the disk: all of them, or none. */
  void write(List<String> lines) throws IOException {
    HeldFile file = own();
    try {
      file.add(String.join("", lines));
    } catch (IOException refused) {
      if (!file.hasLines()) {
        removeOwn();
      }
      throw refused;
    }
  }

  /** Whether all that was written is there, also after the files were let go of. */
  boolean hasAll() {
    try {
      return own != null && own.isWhole();
    } catch (IOException gone) {
      LOG.debug("{} is gone", base, gone);
      giveUpOwn();
      return false;
    }
  }

  private HeldFile own() throws IOException {
    if (own == null) {
      own = make();
    }
    return own;
  }

  private HeldFile make() throws IOException {
    if (spare != null) {
      spare.make();
    }
    for (int number = 1; number <= MOST_FILES; number++) {
      Optional<HeldFile> made = HeldFile.make(named(number));
      if (made.isPresent()) {
        return made.get();
      }
    }
    throw new IOException("there are " + MOST_FILES + " files beside it already");
  }

  /** All that waited is stored. */
  void clear() {
    takenOver.removeIf(HeldFile::isRemoved);
    if (own != null && own.hasLines() && (!keepsRoom || !own.isEmptied())) {
      removeOwn();
    }
  }

  private void removeOwn() {
    if (own == null || own.isRemoved()) {
      own = null;
    } else {
      giveUpOwn();
    }
  }

  private void giveUpOwn() {
    if (own != null) {
      takenOver.add(own);
      own = null;
    }
  }

  /**
   * Closes the files, so that their disk can be taken out; they are this session's all the same.
   */
  void letGo() {
    takenOver.forEach(HeldFile::letGo);
    if (own != null) {
      own.letGo();
    }
  }

  /** Gives the files up; those with lines are the next session's. */
  void close() {
    if (own != null && !own.hasLines()) {
      removeOwn();
    }
    takenOver.removeIf(held -> !held.hasLines() && held.isRemoved());
    letGo();
  }
}
