package datumpeg.bridge.collect;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A file of lines that one session holds by a lock, perhaps with room behind the lines: blanks,
 * which a full disk lets one write over. One thread.
 */
final class HeldFile {
  private static final Logger LOG = LoggerFactory.getLogger(HeldFile.class);

  private final Path path;

  /** Null while the file is let go of. */
  private @Nullable FileChannel channel;

  /** Where the lines end. */
  private long end;

  /** Lines and room. */
  private long size;

  private HeldFile(Path path, @Nullable FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /** A file that is there, unless another session holds it. */
  static Optional<HeldFile> find(Path path) throws IOException {
    HeldFile found = new HeldFile(path, null);
    Optional<FileChannel> channel = found.channel();
    if (channel.isEmpty()) {
      return Optional.empty();
    }
    found.size = channel.get().size();
    found.end = found.size;
    return Optional.of(found);
  }

  /** Empty where there is such a file, or another session was quicker to take it over. */
  static Optional<HeldFile> make(Path path) throws IOException {
    if (Files.exists(path)) {
      return Optional.empty();
    }
    FileChannel channel =
        FileChannel.open(
            path, StandardOpenOption.CREATE_NEW, StandardOpenOption.READ, StandardOpenOption.WRITE);
    if (isLocked(channel)) {
      return Optional.of(new HeldFile(path, channel));
    }
    channel.close();
    return Optional.empty();
  }

  private static boolean isLocked(FileChannel channel) throws IOException {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException heldHere) {
      return false;
    }
  }

  /** Empty where the file is gone, or another session has taken it over. */
  private Optional<FileChannel> channel() throws IOException {
    if (channel == null && Files.exists(path)) {
      FileChannel again = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
      if (isLocked(again)) {
        channel = again;
      } else {
        again.close();
      }
    }
    return Optional.ofNullable(channel);
  }

  private FileChannel there() throws IOException {
    return channel().orElseThrow(() -> new IOException(path + " is gone"));
  }

  Path path() {
    return path;
  }

  boolean hasLines() {
    return end > 0;
  }

  /** Whether all that was written is there. */
  boolean isWhole() throws IOException {
    return there().size() == size;
  }

  String text() throws IOException {
    return new String(
        Channels.newInputStream(there().position(0)).readAllBytes(), StandardCharsets.UTF_8);
  }

  /** Adds room for so many bytes of lines: all of it, or none. */
  void makeRoom(int bytes) throws IOException {
    byte[] blanks = new byte[bytes];
    Arrays.fill(blanks, (byte) ' ');
    write(size, blanks);
  }

  /** Adds lines and forces them to the disk: all of them, or none. */
  void add(String lines) throws IOException {
    byte[] bytes = lines.getBytes(StandardCharsets.UTF_8);
    write(end, bytes);
    end += bytes.length;
  }

  private void write(long position, byte[] bytes) throws IOException {
    FileChannel there = there();
    try {
      write(there, position, bytes);
      size = Math.max(size, position + bytes.length);
    } catch (IOException refused) {
      // Half a line within the room begins on a line of its own, and is left out when it is read.
      there.truncate(size);
      throw refused;
    }
  }

  private static void write(FileChannel there, long position, byte[] bytes) throws IOException {
    there.position(position);
    ByteBuffer left = ByteBuffer.wrap(bytes);
    while (left.hasRemaining()) {
      there.write(left);
    }
    there.force(true);
  }

  /** Takes all lines out; false where that cannot be done, and the file is to be removed. */
  boolean isEmptied() {
    try {
      byte[] blanks = new byte[Math.toIntExact(end)];
      Arrays.fill(blanks, (byte) ' ');
      write(there(), 0, blanks);
      end = 0;
      return true;
    } catch (IOException refused) {
      LOG.debug("{} could not be emptied", path, refused);
      return false;
    }
  }

  /**
   * Empties it before it is removed, under its lock: {@link WaitingFolder} says why. False where
   * its disk does not let it go.
   */
  boolean isRemoved() {
    try {
      Optional<FileChannel> there = channel();
      if (there.isPresent()) {
        there.get().truncate(0);
        Files.deleteIfExists(path);
      }
      return true;
    } catch (IOException e) {
      LOG.warn("{} could not be removed; it is empty or its rows are stored", path, e);
      return false;
    } finally {
      letGo();
    }
  }

  /** Closes the file, and gives up the lock, until something is done with it. */
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
