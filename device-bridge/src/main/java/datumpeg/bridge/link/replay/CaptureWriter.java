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

  private final OutputStream out;
  private final String name;
  private final CaptureHeader header;
  private final @Nullable FileChannel file;
  private long number;

  /**
   * A writer to a stream, which it closes.
   *
   * @param name what to call the stream in messages
   * @throws OuterWorldException if the header cannot be written
   */
  public CaptureWriter(OutputStream out, String name, CaptureHeader header) {
    this(out, name, header, null);
  }

  private CaptureWriter(
      OutputStream out, String name, CaptureHeader header, @Nullable FileChannel file) {
    this.out = out;
    this.name = name;
    this.header = header;
    this.file = file;
    writeLine(CaptureLineText.of(header));
  }

  /**
   * Starts a new file. It is locked while it is written, so that nobody takes it for finished.
   *
   * @throws InputException if the file is there already: a capture is evidence and never
   *     overwritten
   * @throws OuterWorldException if the file cannot be made
   */
  public static CaptureWriter create(Path file, CaptureHeader header) {
    try {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      channel.tryLock(); // given back when the channel is closed
      return new CaptureWriter(Channels.newOutputStream(channel), file.toString(), header, channel);
    } catch (FileAlreadyExistsException exists) {
      throw new InputException(
          "The capture " + file + " exists already; captures are never overwritten.", exists);
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The capture " + file + " could not be created: " + refused.getMessage() + ".", refused);
    }
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

  private void writeLine(String line) {
    long whole = size();
    try {
      out.write((line + "\n").getBytes(StandardCharsets.UTF_8));
      out.flush();
    } catch (IOException refused) {
      cutTo(whole);
      throw new OuterWorldException(
          "The capture " + name + " could not be written: " + refused.getMessage() + ".", refused);
    }
  }

  private long size() {
    try {
      return file == null ? 0 : file.size();
    } catch (IOException e) {
      return 0;
    }
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
      out.close();
    } catch (IOException refused) {
      throw new OuterWorldException(
          "The capture " + name + " could not be closed: " + refused.getMessage() + ".", refused);
    }
  }
}
