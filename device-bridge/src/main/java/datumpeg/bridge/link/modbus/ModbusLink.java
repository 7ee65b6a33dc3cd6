package datumpeg.bridge.link.modbus;

import com.digitalpetri.modbus.TimeoutScheduler;
import com.digitalpetri.modbus.client.ModbusRtuClient;
import com.digitalpetri.modbus.exceptions.ModbusException;
import com.digitalpetri.modbus.exceptions.ModbusResponseException;
import com.digitalpetri.modbus.exceptions.ModbusTimeoutException;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.Link;
import datumpeg.bridge.link.LinkAddress;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.RegisterBlock;
import datumpeg.bridge.link.serial.SerialLink;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Registers of one station, asked for every so often or when somebody asks. Each answer comes as
 * one chunk on the channel {@link RegisterBlock#channel}; an answer that fails to come is asked for
 * again. After {@value #MOST_UNANSWERED} without one the link is lost. Thread-safe.
 */
public final class ModbusLink implements Link {
  /** How long an answer is waited for. Common practice, no source. */
  static final Duration PATIENCE = Duration.ofSeconds(1);

  private static final Logger LOG = LoggerFactory.getLogger(ModbusLink.class);
  private static final int MOST_UNANSWERED = 3;

  private final RegisterBlock block;
  private final LinkClock clock;
  private final LinkListener listener;
  private final SerialTransport transport = new SerialTransport();
  private final ScheduledExecutorService asking =
      Executors.newSingleThreadScheduledExecutor(task -> daemon(task, "asking"));
  private final ScheduledExecutorService waiting =
      Executors.newSingleThreadScheduledExecutor(task -> daemon(task, "waiting"));
  private final ModbusRtuClient client;
  private final SerialLink serial;
  private final AtomicBoolean ended = new AtomicBoolean();
  private final AtomicLong answered = new AtomicLong();
  private int unanswered;

  private ModbusLink(
      LinkAddress.Serial address, RegisterBlock block, LinkClock clock, LinkListener listener) {
    this.block = block;
    this.clock = clock;
    this.listener = listener;
    this.client =
        ModbusRtuClient.create(
            transport,
            settings ->
                settings
                    .setRequestTimeout(PATIENCE)
                    .setTimeoutScheduler(TimeoutScheduler.create(Runnable::run, waiting)));
    this.serial = SerialLink.open(address, clock, new SerialBytes());
    transport.over(serial);
  }

  private static Thread daemon(Runnable task, String what) {
    Thread thread = new Thread(task, "modbus " + what);
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Opens the port for this program alone and begins to ask.
   *
   * @throws datumpeg.bridge.link.LinkUnavailableException if the port is missing, busy, not
   *     permitted or refuses its settings
   */
  public static ModbusLink open(
      LinkAddress.Serial address, RegisterBlock block, LinkClock clock, LinkListener listener) {
    ModbusLink link = new ModbusLink(address, block, clock, listener);
    try {
      link.client.connect();
    } catch (ModbusException e) {
      throw new IllegalStateException("a transport that is open was not taken as such", e);
    }
    if (block.everyMillis() > 0) {
      link.asking.execute(link::askAgainAndAgain);
    }
    return link;
  }

  /** One task at a time: an answer that takes long does not pile up questions. */
  private void askAgainAndAgain() {
    while (!ended.get()) {
      ask();
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(block.everyMillis()));
    }
  }

  /**
   * Somebody waits for this answer: silence must not be mistaken for a program that does nothing.
   */
  private void askUntilAnswered() {
    do {
      ask();
    } while (unanswered > 0 && !ended.get());
  }

  private void ask() {
    if (ended.get()) {
      return;
    }
    try {
      Bytes registers = Bytes.of(registers());
      unanswered = 0;
      answered.incrementAndGet();
      listener.received(new Chunk(registers, clock.now(), clock.monotonicNanos(), block.channel()));
    } catch (ModbusTimeoutException silent) {
      unanswered(silent);
    } catch (ModbusResponseException refused) {
      end(
          "answers, but refuses the registers (Modbus exception %d: 1 function, 2 address, 3 value, 4"
                  .formatted(transport.lastException())
              + " failure)",
          refused);
    } catch (ModbusException failed) {
      unanswered(failed);
    }
  }

  private byte[] registers() throws ModbusException {
    return block.table() == RegisterBlock.Table.HOLDING
        ? client
            .readHoldingRegisters(
                block.station(), new ReadHoldingRegistersRequest(block.first(), block.count()))
            .registers()
        : client
            .readInputRegisters(
                block.station(), new ReadInputRegistersRequest(block.first(), block.count()))
            .registers();
  }

  private void unanswered(ModbusException failure) {
    unanswered++;
    LOG.info("station {} on {} did not answer", block.station(), address().text(), failure);
    if (unanswered >= MOST_UNANSWERED) {
      end("did not answer " + unanswered + " times", failure);
    }
  }

  /** The station is gone, or is not what the profile says. */
  private void end(String what, @Nullable Throwable cause) {
    lost(
        new LinkLostException(
            address().text(),
            answered.get(),
            "Modbus station "
                + block.station()
                + " on "
                + serial.address().text()
                + " "
                + what
                + ".",
            cause));
    serial.close();
  }

  private void lost(LinkLostException loss) {
    if (ended.compareAndSet(false, true)) {
      asking.shutdown();
      waiting.shutdown();
      listener.lost(loss);
    }
  }

  @Override
  public LinkAddress address() {
    return serial.address();
  }

  /** Asks for the registers now, whatever the bytes. */
  @Override
  public void send(Bytes bytes) {
    try {
      asking.execute(this::askUntilAnswered);
    } catch (RejectedExecutionException over) {
      throw new LinkLostException(
          address().text(), answered.get(), address().text() + " is closed.", over);
    }
  }

  @Override
  public void close() {
    ended.set(true);
    asking.shutdownNow();
    waiting.shutdownNow();
    serial.close();
  }

  /** What the serial line says goes to the library, its loss to the listener. */
  private final class SerialBytes implements LinkListener {
    @Override
    public void received(Chunk chunk) {
      transport.received(chunk.bytes());
    }

    @Override
    public void lost(LinkLostException loss) {
      ModbusLink.this.lost(loss);
    }

    @Override
    public void ended() {
      throw new IllegalStateException("a serial link has no end of its own");
    }
  }
}
