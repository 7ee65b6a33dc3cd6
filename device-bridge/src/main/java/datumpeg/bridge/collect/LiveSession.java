package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.quantity.Quantity;
import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.bridge.collect.SessionEvent.Ended;
import datumpeg.bridge.collect.SessionEvent.InputEnded;
import datumpeg.bridge.collect.SessionEvent.Lost;
import datumpeg.bridge.collect.SessionEvent.Received;
import datumpeg.bridge.collect.SessionEvent.Typed;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkListener;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.meter.MeterStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.jspecify.annotations.Nullable;

/**
 * Measuring with live links and a keyboard: every event is dealt with in turn on the thread that
 * calls {@link #run}. Whatever a link delivers is kept in the capture before it is looked at.
 *
 * <p>Typed lines: a value (metres or degrees unless it carries its unit), {@code skip}, {@code
 * back}, {@code undo}, {@code quit}; an empty line does nothing.
 */
public final class LiveSession {
  private final Collector collector;
  private final CaptureWriter capture;
  private final LinkClock clock;
  private final SessionWatcher watcher;
  private final BlockingQueue<SessionEvent> events = new LinkedBlockingQueue<>();
  private final Map<String, OneLink> links = new LinkedHashMap<>();
  private final Set<String> open = new HashSet<>();
  private boolean inputOpen;
  private long recordedCount;
  private @Nullable LinkLostException lastLoss;

  public LiveSession(
      Collector collector, CaptureWriter capture, LinkClock clock, SessionWatcher watcher) {
    this.collector = collector;
    this.capture = capture;
    this.clock = clock;
    this.watcher = watcher;
  }

  /** One link under its profile. */
  private record OneLink(String address, String meter, MeterStream stream) {}

  /**
   * What a session came to.
   *
   * @param recordedCount readings committed and not withdrawn
   * @param loss the last link that was lost, if losing it ended the session
   */
  public record Ending(long recordedCount, Optional<LinkLostException> loss) {}

  /**
   * Announces a link and gives what listens to it.
   *
   * @param name as in the capture's header
   */
  public LinkListener listenerFor(String name, String address, String meter, MeterStream stream) {
    links.put(name, new OneLink(address, meter, stream));
    open.add(name);
    return new LinkListener() {
      @Override
      public void received(Chunk chunk) {
        events.add(new Received(name, chunk));
      }

      @Override
      public void lost(LinkLostException loss) {
        events.add(new Lost(name, loss));
      }

      @Override
      public void ended() {
        events.add(new Ended(name));
      }
    };
  }

  /** A person will type. */
  public void expectInput() {
    inputOpen = true;
  }

  /** A line was typed. Thread-safe. */
  public void typed(String line) {
    events.add(new Typed(line));
  }

  /** Nothing more will be typed. Thread-safe. */
  public void inputEnded() {
    events.add(new InputEnded());
  }

  /**
   * Measures until the list is done, the person quits, or nothing more can come.
   *
   * @throws InterruptedException if the thread is interrupted; everything acknowledged is recorded
   */
  public Ending run() throws InterruptedException {
    ask();
    boolean going = true;
    while (going && collector.wanted().isPresent() && (!open.isEmpty() || inputOpen)) {
      going = deal(events.take());
    }
    boolean endedByLoss = going && collector.wanted().isPresent();
    return new Ending(
        recordedCount, endedByLoss ? Optional.ofNullable(lastLoss) : Optional.empty());
  }

  private boolean deal(SessionEvent event) {
    if (event instanceof Received received) {
      received(received);
    } else if (event instanceof Lost lost) {
      lost(lost);
    } else if (event instanceof Ended ended) {
      open.remove(ended.link());
    } else if (event instanceof InputEnded) {
      inputOpen = false;
    } else if (event instanceof Typed typed) {
      return typedLine(typed.line().strip());
    }
    return true;
  }

  private void ask() {
    collector
        .wanted()
        .ifPresent(
            wanted -> {
              capture.acted(
                  Act.Kind.TARGET,
                  wanted.target().text(),
                  wanted.face() == 0 ? null : wanted.face(),
                  null,
                  clock);
              watcher.asking(wanted, collector.leftAfterThis());
            });
  }

  private void received(Received received) {
    capture.received(received.link(), received.chunk());
    OneLink link = links.get(received.link());
    if (link == null) {
      throw new IllegalStateException("bytes of a link nobody announced: " + received.link());
    }
    for (MeterStream.Message message :
        link.stream().accept(received.chunk().bytes(), received.chunk().channel())) {
      if (message.decoded() instanceof Measured measured) {
        take(delivered(link, received.chunk(), message, measured));
      } else if (message.decoded() instanceof NotAReading other) {
        watcher.putAside("not a reading: " + other.detail());
      }
    }
  }

  private static Delivered delivered(
      OneLink link, Chunk chunk, MeterStream.Message message, Measured measured) {
    return new Delivered(
        measured.valueText(),
        measured.unit().symbol(),
        measured.dimension(),
        link.stream().profile().valueSi(measured),
        chunk.receivedAt().atOffset(ZoneOffset.UTC),
        link.meter(),
        link.address(),
        message.frame().bytes().hex(),
        "measure");
  }

  private void take(Delivered delivered) {
    Offer offer = collector.offer(delivered);
    if (offer != Offer.WAITING) {
      capture.acted(Act.Kind.HELD, null, null, null, clock);
      watcher.putAside(why(offer, delivered));
      return;
    }
    collector
        .accept()
        .ifPresent(
            stored -> {
              recordedCount++;
              capture.acted(Act.Kind.ACCEPT, null, null, null, clock);
              watcher.recorded(stored.entry());
            });
    ask();
  }

  private static String why(Offer offer, Delivered delivered) {
    String value = delivered.valueText() + " " + delivered.unitText();
    return switch (offer) {
      case OTHER_QUANTITY -> value.strip() + " is not the kind of value this target takes";
      case IMPOSSIBLE -> value.strip() + " cannot be a reading of this target";
      case NO_TARGET, WAITING -> value.strip() + " came when nothing was asked for";
    };
  }

  private void lost(Lost lost) {
    OneLink link = links.get(lost.link());
    Bytes dropped = link == null ? Bytes.empty() : link.stream().lost();
    open.remove(lost.link());
    lastLoss = lost.loss();
    watcher.lost(lost.loss(), dropped.length());
  }

  /** Returns false when the person quits. */
  private boolean typedLine(String line) {
    switch (line.toLowerCase(Locale.ROOT)) {
      case "" -> {}
      case "quit" -> {
        return false;
      }
      case "skip" -> {
        capture.acted(Act.Kind.SKIP, null, null, null, clock);
        collector.skip();
        ask();
      }
      case "back" -> {
        capture.acted(Act.Kind.BACK, null, null, null, clock);
        collector.back();
        ask();
      }
      case "undo" -> undo();
      default -> typedValue(line);
    }
    return true;
  }

  private void undo() {
    collector
        .undo()
        .ifPresentOrElse(
            reading -> {
              recordedCount--;
              capture.acted(Act.Kind.UNDO, null, null, null, clock);
              watcher.withdrawn(reading);
              ask();
            },
            () -> watcher.putAside("nothing of this session is left to undo"));
  }

  private void typedValue(String line) {
    MeasuredQuantity quantity =
        collector
            .wanted()
            .map(wanted -> wanted.target().quantity())
            .orElse(MeasuredQuantity.DISTANCE);
    try {
      String unit =
          line.matches("[+-]?[0-9.,]+") ? (quantity == MeasuredQuantity.TILT ? "deg" : "m") : "";
      Quantity value = Quantity.parse(line, unit);
      capture.acted(Act.Kind.TYPED, null, null, unit.isEmpty() ? line : line + " " + unit, clock);
      Instant now = clock.now();
      take(
          new Delivered(
              line,
              unit,
              value.dimension(),
              value.siValue(),
              now.atOffset(ZoneOffset.UTC),
              "",
              "keyboard:",
              "",
              "measure"));
    } catch (QuantityFormatException e) {
      watcher.putAside(e.getMessage() + " Or type skip, back, undo or quit.");
    }
  }
}
