package datumpeg.bridge.link.replay;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureEntry.Direction;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes a capture while measuring. Each line is handed to the operating system before the method
 * returns, so that a crash of this program tears at most the line being written. Thread-safe.
 */
public final class CaptureWriter implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(CaptureWriter.class);

  private final String name;
  private final CaptureHeader header;

  /** Null where the lines go to a stream. */
  private final @Nullable Path path;

  /** Null while the file is let go of. */
  private @Nullable OutputStream out;

  private @Nullable FileChannel file;
  private long number;

  /**
   * A writer to a stream, which it closes.
   *
   * @param name what to call the stream in messages
   * @throws OuterWorldException if the header cannot be written
   */
  public CaptureWriter(OutputStream out, String name, CaptureHeader header) {
    this(name, header, null);
    this.out = out;
    writeLine(CaptureLineText.of(header));
  }

  private CaptureWriter(String name, CaptureHeader header, @Nullable Path path) {
    this.name = name;
    this.header = header;
    this.path = path;
  }

  /**
   * Starts a new file. It is locked while it is written, so that nobody takes it for finished.
   *
   * @throws InputException if the file is there already: a capture is evidence and never
   *     overwritten
   * @throws OuterWorldException if the file cannot be made
   */
  public static CaptureWriter create(Path file, CaptureHeader header) {
    CaptureWriter writer = new CaptureWriter(file.toString(), header, file);
    try {
      writer.begin(file);
    } catch (OuterWorldException refused) {
      writer.letGo();
      throw refused;
    }
    return writer;
  }

  /**
   * The same, or, where the file cannot be made, a writer that tries it with each line.
   *
   * @throws InputException if the file is there already
   */
  public static CaptureWriter createWhenItCan(Path file, CaptureHeader header) {
    CaptureWriter writer = new CaptureWriter(file.toString(), header, file);
    try {
      writer.begin(file);
    } catch (OuterWorldException refused) {
      LOG.debug("{} is made later", file, refused);
      writer.letGo();
    }
    return writer;
  }

  private void begin(Path file) {
    try {
      use(
          FileChannel.open(
              file,
              StandardOpenOption.CREATE_NEW,
              StandardOpenOption.READ,
              StandardOpenOption.WRITE));
    } catch (FileAlreadyExistsException exists) {
      throw new InputException(
          "The capture " + file + " exists already; captures are never overwritten.", exists);
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The capture " + file + " could not be created: " + refused.getMessage() + ".", refused);
    }
    writeLine(CaptureLineText.of(header));
  }

  /** Keeps bytes that were received. */
  public Transfer received(String link, Chunk chunk) {
    return transferred(link, Direction.RX, chunk);
  }

  /** Keeps bytes that were sent. */
  public Transfer sent(String link, String channel, Bytes bytes, LinkClock clock) {
    return transferred(
        link, Direction.TX, new Chunk(bytes, clock.now(), clock.monotonicNanos(), channel));
  }

  private synchronized Transfer transferred(String link, Direction direction, Chunk chunk) {
    if (!header.links().containsKey(link)) {
      throw new IllegalArgumentException("link " + link + " is not in the capture's header");
    }
    Transfer transfer =
        new Transfer(
            number + 1,
            chunk.receivedAt(),
            chunk.monotonicNanos(),
            link,
            direction,
            chunk.channel(),
            chunk.bytes());
    write(transfer);
    return transfer;
  }

  /** Keeps what the person did, now by the clock given. */
  public synchronized Act acted(
      Kind kind,
      @Nullable String target,
      @Nullable Integer face,
      @Nullable String text,
      LinkClock clock) {
    Act act = new Act(number + 1, clock.now(), clock.monotonicNanos(), kind, target, face, text);
    write(act);
    return act;
  }

  private void write(CaptureEntry entry) {
    writeLine(CaptureLineText.of(entry));
    number = entry.number();
  }

  private void use(FileChannel channel) throws IOException {
    channel.tryLock(); // given back when the channel is closed
    file = channel;
    out = Channels.newOutputStream(channel);
  }

  private void writeLine(String line) {
    long whole = 0;
    try {
      OutputStream open = stream();
      whole = file == null ? 0 : file.size();
      open.write((line + "\n").getBytes(StandardCharsets.UTF_8));
      open.flush();
    } catch (IOException refused) {
      cutTo(whole);
      throw new OuterWorldException(
          "The capture " + name + " could not be written: " + refused.getMessage() + ".", refused);
    }
  }

  private OutputStream stream() throws IOException {
    if (out == null && path != null) {
      continueAt(path);
    }
    if (out == null) {
      throw new IOException("it is closed");
    }
    return out;
  }

  /** Goes on behind the last whole line, in a new file where the old one is gone. */
  private void continueAt(Path path) throws IOException {
    FileChannel channel =
        FileChannel.open(
            path, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    long end;
    try {
      end = wholeLines(channel);
      channel.truncate(end).position(end);
      use(channel);
    } catch (IOException refused) {
      channel.close();
      throw refused;
    }
    if (end == 0) {
      writeLine(CaptureLineText.of(header));
    }
  }

  private static long wholeLines(FileChannel channel) throws IOException {
    long end = channel.size();
    ByteBuffer last = ByteBuffer.allocate(1);
    while (end > 0 && (channel.read(last.clear(), end - 1) < 1 || last.get(0) != '\n')) {
      end--;
    }
    return end;
  }

  /** Closes the file until the next line, so that its disk can be taken out. */
  public synchronized void letGo() {
    if (path == null || out == null) {
      return;
    }
    try {
      out.close();
    } catch (IOException e) {
      LOG.warn("{} could not be closed", name, e);
    }
    out = null;
    file = null;
  }

  /**
   * A full disk takes part of a line: whatever is written later must begin on a line of its own.
   */
  private void cutTo(long whole) {
    try {
      if (file != null && whole > 0) {
        file.truncate(whole);
      }
    } catch (IOException e) {
      LOG.warn("the end of {} may be half a line", name, e);
    }
  }

  @Override
  public synchronized void close() {
    try {
      if (out != null) {
        out.close();
      }
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The capture " + name + " could not be closed: " + refused.getMessage() + ".", refused);
    }
  }
}
