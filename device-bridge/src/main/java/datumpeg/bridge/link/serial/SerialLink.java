package datumpeg.bridge.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import java.util.concurrent.atomic.AtomicLong;

/**
 * An open serial port.
 *
 * <p>One thread waits for bytes, half a second at a time: 0 bytes means that none came, −1 that the
 * port is gone. {@code isOpen()} of the library stays true after an unplug and is not asked.
 * Thread-safe.
 */
public final class SerialLink implements Link {
  private static final int WAIT_MILLIS = 500;
  private static final int BUFFER_BYTES = 4096;

  private final LinkAddress.Serial address;
  private final SerialPort port;
  private final LinkClock clock;
  private final LinkListener listener;
  private final Thread reader;
  private volatile boolean closed;
  private final AtomicLong receivedByteCount = new AtomicLong();

  private SerialLink(
      LinkAddress.Serial address, SerialPort port, LinkClock clock, LinkListener listener) {
    this.address = address;
    this.port = port;
    this.clock = clock;
    this.listener = listener;
    this.reader = new Thread(this::read, "link " + address.text());
    reader.setDaemon(true);
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
    link.reader.start();
    return link;
  }

  private void read() {
    byte[] buffer = new byte[BUFFER_BYTES];
    while (!closed) {
      int count = port.readBytes(buffer, buffer.length);
      if (closed) {
        break;
      }
      if (count < 0) {
        tellLost();
        break;
      }
      if (count > 0) {
        deliver(Bytes.of(buffer, 0, count));
      }
    }
    port.closePort();
  }

  private void deliver(Bytes bytes) {
    receivedByteCount.addAndGet(bytes.length());
    listener.received(new Chunk(bytes, clock.now(), clock.monotonicNanos(), Chunk.ONLY_CHANNEL));
  }

  private void tellLost() {
    // The port is given back first: who hears of the loss may want to open it again.
    port.closePort();
    closed = true;
    listener.lost(
        lost(
            "was lost after %d bytes: unplugged or switched off"
                .formatted(receivedByteCount.get())));
  }

  private LinkLostException lost(String what) {
    return new LinkLostException(
        address.text(),
        receivedByteCount.get(),
        "The serial port " + address.path() + " " + what + ".");
  }

  @Override
  public LinkAddress address() {
    return address;
  }

  @Override
  public void send(Bytes bytes) {
    if (closed) {
      throw lost("is closed, so that %d bytes could not be sent".formatted(bytes.length()));
    }
    int count = port.writeBytes(bytes.toArray(), bytes.length());
    if (count != bytes.length()) {
      throw lost("took %d of %d bytes sent".formatted(Math.max(count, 0), bytes.length()));
    }
  }

  @Override
  public void close() {
    closed = true;
    if (Thread.currentThread() == reader) {
      return;
    }
    boolean interrupted = false;
    while (reader.isAlive()) {
      try {
        reader.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
