package datumpeg.bridge.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.LinkThread;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * An open serial port.
 *
 * <p>One thread waits for bytes, half a second at a time: 0 bytes means that none came, −1 that the
 * port is gone. {@code isOpen()} of the library stays true after an unplug and is not asked.
 * Closing takes up to that half second. Thread-safe.
 */
public final class SerialLink implements Link {
  private static final Logger LOG = LoggerFactory.getLogger(SerialLink.class);
  private static final int WAIT_MILLIS = 500;
  private static final int BUFFER_BYTES = 4096;

  private final LinkAddress.Serial address;
  private final SerialPort port;
  private final LinkClock clock;
  private final LinkListener listener;
  private final LinkThread thread;
  private final AtomicLong receivedByteCount = new AtomicLong();
  private volatile boolean closed;

  private SerialLink(
      LinkAddress.Serial address, SerialPort port, LinkClock clock, LinkListener listener) {
    this.address = address;
    this.port = port;
    this.clock = clock;
    this.listener = listener;
    this.thread = new LinkThread(address, this::run);
  }

  /**
   * Opens the port for this program alone and begins to read.
   *
   * @throws datumpeg.bridge.link.LinkUnavailableException if the port is missing, busy, not
   *     permitted or refuses its settings
   */
  public static SerialLink open(
      LinkAddress.Serial address, LinkClock clock, LinkListener listener) {
    SerialPort port = SerialOpening.open(address);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, WAIT_MILLIS, 0);
    SerialLink link = new SerialLink(address, port, clock, listener);
    link.thread.start();
    return link;
  }

  private void run() {
    LinkLostException loss;
    try {
      loss = readUntilEnd();
    } catch (RuntimeException defect) {
      LOG.error("The listener of {} failed", address.text(), defect);
      loss = lost("is no longer read: a defect of this program, see the log", defect);
    }
    // The port is given back first: who hears of the loss may want to open it again.
    port.closePort();
    boolean asked = closed;
    closed = true;
    if (!asked && loss != null) {
      listener.lost(loss);
    }
  }

  /** Reads until the port is gone, which it returns, or until the link is closed. */
  private @Nullable LinkLostException readUntilEnd() {
    byte[] buffer = new byte[BUFFER_BYTES];
    while (!closed) {
      int count = port.readBytes(buffer, buffer.length);
      if (count < 0) {
        return lost(
            "was lost after %d bytes: unplugged or switched off".formatted(receivedByteCount.get()),
            null);
      }
      if (count > 0 && !closed) {
        receivedByteCount.addAndGet(count);
        listener.received(chunk(Bytes.of(buffer, 0, count)));
      }
    }
    return null;
  }

  private Chunk chunk(Bytes bytes) {
    return new Chunk(bytes, clock.now(), clock.monotonicNanos(), Chunk.ONLY_CHANNEL);
  }

  private LinkLostException lost(String what, @Nullable Throwable cause) {
    return new LinkLostException(
        address.text(),
        receivedByteCount.get(),
        "The serial port " + address.path() + " " + what + ".",
        cause);
  }

  @Override
  public LinkAddress address() {
    return address;
  }

  @Override
  public void send(Bytes bytes) {
    if (closed) {
      throw lost("is closed, so that %d bytes could not be sent".formatted(bytes.length()), null);
    }
    int count = port.writeBytes(bytes.toArray(), bytes.length());
    if (count != bytes.length()) {
      throw lost("took %d of %d bytes sent".formatted(Math.max(count, 0), bytes.length()), null);
    }
  }

  @Override
  public void close() {
    closed = true;
    thread.awaitEnd();
  }
}
