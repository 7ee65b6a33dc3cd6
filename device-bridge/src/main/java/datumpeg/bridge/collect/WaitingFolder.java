package datumpeg.bridge.collect;

import datumpeg.bridge.collect.SpareFolders.Spare;
import datumpeg.bridge.json.JsonException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The files of a stage in one folder, one for each session in which readings wait.
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
  private final List<Held> takenOver = new ArrayList<>();
  private @Nullable Held own;

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

  /** A file of this session's, under its lock unless it was let go of. */
  private static final class Held {
    private final Path path;
    private @Nullable FileChannel channel;

    Held(Path path, @Nullable FileChannel channel) {
      this.path = path;
      this.channel = channel;
    }

    /** Empty where the file is gone, or another session has taken it over. */
    Optional<FileChannel> channel() throws IOException {
      if (channel == null && Files.exists(path)) {
        FileChannel again =
            FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
        if (isLocked(again)) {
          channel = again;
        } else {
          again.close();
        }
      }
      return Optional.ofNullable(channel);
    }

    void letGo() {
      try {
        if (channel != null) {
          channel.close();
        }
      } catch (IOException e) {
        LOG.warn("{} could not be closed", path, e);
      }
      channel = null;
    }
  }

  /** The first of the folder's files. */
  Path base() {
    return base;
  }

  /** The file of this session's own, else the first it took over; empty where there is none. */
  Optional<Path> file() {
    return own != null
        ? Optional.of(own.path)
        : takenOver.stream().map(held -> held.path).findFirst();
  }

  /** Takes over what sessions that died have left; what is in it, each file in its order. */
  List<WaitingLine> takeOver() throws IOException {
    List<WaitingLine> lines = new ArrayList<>();
    if (spare != null && !spare.isOurs()) {
      return lines;
    }
    for (int number = 1; number <= MOST_FILES; number++) {
      Path path = named(number);
      Held held = new Held(path, null);
      FileChannel channel = held.channel().orElse(null);
      if (channel != null && channel.size() > 0) {
        String text =
            new String(Channels.newInputStream(channel).readAllBytes(), StandardCharsets.UTF_8);
        text.lines().forEach(line -> read(line, path).ifPresent(lines::add));
        takenOver.add(held);
      } else {
        held.letGo();
      }
    }
    return lines;
  }

  /** One line; empty for a blank one, and for one cut short by the end of a program. */
  private static Optional<WaitingLine> read(String line, Path file) {
    try {
      return WaitingLine.read(line);
    } catch (JsonException | IllegalArgumentException e) {
      LOG.warn("a line of {} does not read and is left out: {}", file, line, e);
      return Optional.empty();
    }
  }

  private static boolean isLocked(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException heldHere) {
      return false;
    }
  }

  private Path named(int number) {
    String name = base.toFile().getName();
    return number == 1
        ? base
        : base.resolveSibling(name.replaceFirst("\\.jsonl$", "." + number + ".jsonl"));
  }

  /** Adds lines to this session's file and forces them to the disk: all of them, or none. */
  void write(List<String> lines) throws IOException {
    FileChannel channel = own();
    long whole = channel.size();
    try {
      channel.position(whole);
      ByteBuffer bytes = ByteBuffer.wrap(String.join("", lines).getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    } catch (IOException refused) {
      channel.truncate(whole);
      if (whole == 0 && own != null) {
        remove(own);
        own = null;
      }
      throw refused;
    }
  }

  private FileChannel own() throws IOException {
    if (own != null) {
      Held held = own;
      own = null;
      FileChannel channel =
          held.channel().orElseThrow(() -> new IOException("the file with the others is gone"));
      own = held;
      return channel;
    }
    if (spare != null) {
      spare.make();
    }
    for (int number = 1; number <= MOST_FILES; number++) {
      FileChannel made = make(named(number));
      if (made != null) {
        own = new Held(named(number), made);
        return made;
      }
    }
    throw new IOException("there are " + MOST_FILES + " files beside it already");
  }

  /** Null where there is such a file, or another session was quicker to take it over. */
  private static @Nullable FileChannel make(Path path) throws IOException {
    if (Files.exists(path)) {
      return null;
    }
    FileChannel channel =
        FileChannel.open(
            path, StandardOpenOption.CREATE_NEW, StandardOpenOption.READ, StandardOpenOption.WRITE);
    if (isLocked(channel)) {
      return channel;
    }
    channel.close();
    return null;
  }

  /** All that waited is stored. */
  void clear() {
    takenOver.forEach(WaitingFolder::remove);
    takenOver.clear();
    if (own != null) {
      remove(own);
      own = null;
    }
  }

  private static void remove(Held held) {
    try {
      Optional<FileChannel> channel = held.channel();
      if (channel.isPresent()) {
        channel.get().truncate(0);
        Files.deleteIfExists(held.path);
      }
    } catch (IOException e) {
      LOG.warn("{} could not be removed; it is empty or its rows are stored", held.path, e);
    }
    held.letGo();
  }

  /**
   * Closes the files, so that their disk can be taken out; they are this session's all the same.
   */
  void letGo() {
    takenOver.forEach(Held::letGo);
    if (own != null) {
      own.letGo();
    }
  }
}
