package datumpeg.bridge.collect;

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
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.meter.MeterStream;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Measuring with live links and a keyboard: every event is dealt with in turn on the thread that
 * calls {@link #run}. Whatever a link delivers is kept in the capture before it is looked at.
 *
 * <p>Typed lines: a value, or {@code skip}, {@code back}, {@code undo}, {@code quit}; where a value
 * is held {@code yes}, {@code again} or the number of a choice; an empty line does nothing.
 */
public final class LiveSession {
  private final Guide guide;
  private final ReadingStore store;
  private final SessionCapture capture;
  private final Supplier<List<Wanted>> further;
  private final LinkClock clock;
  private final SessionWatcher watcher;
  private final BlockingQueue<SessionEvent> events = new LinkedBlockingQueue<>();
  private final Map<String, OneLink> links = new LinkedHashMap<>();
  private final Set<String> open = new HashSet<>();
  private boolean inputOpen;
  private boolean waited;
  private @Nullable LinkLostException lastLoss;

  /**
   * @param name of the capture, which every reading names with the line it came by
   */
  public LiveSession(
      GuideSetting setting,
      ReadingStore store,
      CaptureWriter capture,
      String name,
      LinkClock clock,
      SessionWatcher watcher) {
    this.store = store;
    this.capture = new SessionCapture(capture, name, clock, watcher);
    this.clock = clock;
    this.watcher = watcher;
    this.guide =
        new Guide(
            setting.collector(),
            setting.rule(),
            setting.order(),
            setting.round(),
            this.capture::acted,
            watcher);
    this.further = setting.further();
  }

  /** One link under its profile. */
  private record OneLink(String address, String meter, MeterStream stream) {}

  /**
   * What a session came to.
   *
   * @param recordedCount readings taken and not withdrawn
   * @param waitingCount rows that could not be stored yet
   * @param waitingOnDisk whether those outlive the program
   * @param loss the last link that was lost, if losing it ended the session
   */
  public record Ending(
      long recordedCount,
      int waitingCount,
      boolean waitingOnDisk,
      Optional<LinkLostException> loss) {}

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
    guide.ask();
    watcher.stands(guide.state());
    boolean going = true;
    while (going && isAsking() && (!open.isEmpty() || inputOpen)) {
      going = deal(events.take());
      tellWaiting();
      if (going && !isAsking()) {
        guide.further(further.get());
      }
      watcher.stands(guide.state());
    }
    store.drain();
    boolean endedByLoss = going && isAsking();
    return new Ending(
        guide.takenCount(),
        store.waitingCount(),
        store.isWaitingOnDisk(),
        endedByLoss ? Optional.ofNullable(lastLoss) : Optional.empty());
  }

  /** What the session shows. */
  public GuideState state() {
    return guide.state();
  }

  private boolean isAsking() {
    return guide.state().wanted().isPresent() || guide.state().question().isPresent();
  }

  private void tellWaiting() {
    if (store.waitingCount() > 0) {
      watcher.waiting(
          store.waitingCount(),
          store.trouble().map(Throwable::getMessage).orElse("")
              + (store.isWaitingOnDisk()
                  ? ""
                  : " They could not be written beside the record either: keep the program running."));
      waited = true;
    } else if (waited) {
      watcher.drained();
      waited = false;
    }
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

  private void received(Received received) {
    String source = capture.received(received.link(), received.chunk());
    watcher.received(received.link(), received.chunk());
    OneLink link = links.get(received.link());
    if (link == null) {
      throw new IllegalStateException("bytes of a link nobody announced: " + received.link());
    }
    List<Delivered> values = new ArrayList<>();
    for (MeterStream.Message message :
        link.stream().accept(received.chunk().bytes(), received.chunk().channel())) {
      if (message.decoded() instanceof Measured measured) {
        values.add(delivered(link, received.chunk(), message, measured, source));
      } else if (message.decoded() instanceof NotAReading other) {
        watcher.putAside("not a reading: " + other.detail());
        watcher.said(received.link(), other);
      }
    }
    for (Delivered value : values) {
      if (isBurst(value, values)) {
        guide.late(value);
      } else {
        guide.value(value);
      }
    }
  }

  /**
   * Nobody measures one kind of value twice within the moment of one piece of bytes: such values
   * were kept back somewhere.
   */
  private static boolean isBurst(Delivered value, List<Delivered> values) {
    return values.stream().filter(other -> other.dimension() == value.dimension()).count() > 1;
  }

  private static Delivered delivered(
      OneLink link, Chunk chunk, MeterStream.Message message, Measured measured, String source) {
    return new Delivered(
        measured.valueText(),
        measured.unit().symbol(),
        measured.dimension(),
        link.stream().profile().valueSi(measured),
        chunk.receivedAt().atOffset(ZoneOffset.UTC),
        link.meter(),
        link.address(),
        message.frame().bytes().hex(),
        source);
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
    String word = line.toLowerCase(Locale.ROOT);
    Optional<GuideState.Question> question = guide.state().question();
    if (question.isPresent() && question.get().choices().size() > 1 && word.matches("[1-9]")) {
      guide.choose(Integer.parseInt(word) - 1);
      return true;
    }
    switch (word) {
      case "" -> {}
      case "quit" -> {
        return false;
      }
      case "yes", "y", "keep" -> guide.accept();
      case "again", "no", "n" -> guide.again();
      case "skip" -> guide.skip();
      case "back" -> guide.back();
      case "undo" -> guide.undo();
      default -> typedValue(line);
    }
    return true;
  }

  private void typedValue(String line) {
    Optional<Wanted> wanted = guide.state().wanted();
    if (wanted.isEmpty()) {
      watcher.putAside("nothing is asked for");
      return;
    }
    try {
      TypedValue value = TypedValue.of(line, wanted.get(), guide.rule());
      String source = capture.acted(Kind.TYPED, null, value.actText());
      guide.value(value.delivered(clock.now().atOffset(ZoneOffset.UTC), source));
    } catch (QuantityFormatException e) {
      watcher.putAside(e.getMessage() + " Or type skip, back, undo or quit.");
    }
  }
}
