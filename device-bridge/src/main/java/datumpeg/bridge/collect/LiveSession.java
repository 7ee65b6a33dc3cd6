package datumpeg.bridge.collect;

import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.bridge.collect.SessionEvent.InputEnded;
import datumpeg.bridge.collect.SessionEvent.Received;
import datumpeg.bridge.collect.SessionEvent.Typed;
import datumpeg.bridge.failure.IntegrityException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.link.ReturningLinkListener;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.mistake.Nearest;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Measuring with live links and a keyboard: every event is dealt with in turn on the thread that
 * calls {@link #run}. Whatever a link delivers is kept in the capture before it is looked at.
 *
 * <p>Typed lines: a value, or {@code skip}, {@code back}, {@code undo}, {@code quit}; where a value
 * is held {@code yes}, {@code again} or the number of a choice; where a question of the stage is
 * asked, {@code yes} or {@code no}; {@code go TARGET} asks for a target out of turn; an empty line
 * tells meters that can be told to measure.
 */
public final class LiveSession {
  private final Guide guide;
  private final ReadingStore store;
  private final DrainPace pace;
  private final SessionCapture capture;
  private final Supplier<List<Wanted>> further;
  private final List<Wanted> all;
  private final LinkClock clock;
  private final SessionWatcher watcher;
  private final Duration patience;
  private final SessionEvents events;
  private final MeterFeed feed;
  private final LinkPresence links;
  private final List<Runnable> onEmptyLine = new ArrayList<>();
  private boolean inputOpen;
  private final WaitingNews waiting;

  /**
   * @param name of the capture, which every reading names with the line it came by
   * @param terms with its links
   * @param pause between two tries to store what waits
   */
  public LiveSession(
      GuideSetting setting,
      ReadingStore store,
      CaptureWriter capture,
      String name,
      LinkClock clock,
      LinkTerms terms,
      Duration pause,
      SessionWatcher watcher) {
    this.store = store;
    this.pace = new DrainPace(clock, pause);
    this.waiting = new WaitingNews(store, watcher);
    this.patience = terms.patience();
    this.events = new SessionEvents(clock);
    this.feed = new MeterFeed(watcher, terms.apart());
    this.links = new LinkPresence(feed, watcher);
    this.capture = new SessionCapture(capture, name, clock, pause, watcher);
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
    this.all = setting.all();
  }

  /**
   * What a session came to.
   *
   * @param recordedCount readings taken and not withdrawn
   * @param waitingCount rows that could not be stored yet
   * @param waitingOnDisk whether those outlive the program
   * @param waitingIn the file they are in; empty if nothing waits or not all of it is in one
   * @param loss the last link that was lost, if losing it ended the session
   */
  public record Ending(
      long recordedCount,
      int waitingCount,
      boolean waitingOnDisk,
      Optional<Path> waitingIn,
      Optional<LinkLostException> loss) {}

  /**
   * Announces a link and gives what listens to it.
   *
   * @param name as in the capture's header
   */
  public ReturningLinkListener listenerFor(
      String name, String address, String meter, MeterStream stream) {
    feed.add(name, address, meter, stream);
    links.add(name);
    return events.listener(name);
  }

  /** Whether a value becomes a reading without a person's word, where nothing speaks against it. */
  boolean takesByItself() {
    return guide.takesByItself();
  }

  /** What an empty line does besides: for instance, tells a meter to measure. */
  public void onEmptyLine(Runnable act) {
    onEmptyLine.add(act);
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
    while (going && isAsking() && (links.isAnyOpen() || links.isAnyAway() || inputOpen)) {
      Optional<SessionEvent> event = nextEvent();
      if (event.isPresent()) {
        going = deal(event.get());
      } else if (!isLive()) {
        break;
      }
      tryAgain();
      if (going && !isAsking()) {
        guide.further(furtherNow());
      }
      watcher.stands(guide.state());
    }
    store.drain();
    boolean endedByLoss = going && isAsking();
    return new Ending(
        guide.takenCount(),
        store.waitingCount(),
        store.isWaitingOnDisk(),
        store.waitingPlace(),
        endedByLoss ? links.lastLoss() : Optional.empty());
  }

  private void tryAgain() {
    waiting.tell(); // first: a record that is locked takes seconds to say no again
    pace.tryAgain(store.waitingCount(), store::drain);
    if (!store.isRecordThere()) {
      capture.letGo();
    }
    waiting.tell();
  }

  /** None while the record cannot be asked: what is measured by then waits, and is not lost. */
  private List<Wanted> furtherNow() {
    try {
      return further.get();
    } catch (OuterWorldException | IntegrityException unreadable) {
      watcher.putAside(
          "whether more readings would decide anything is not known: " + unreadable.getMessage());
      return List.of();
    }
  }

  private boolean isLive() {
    return inputOpen || links.isAnyOpen();
  }

  /**
   * Empty when it is time to try what waits to be stored; and, when nobody can type, if links are
   * away for longer than patience lasts.
   */
  private Optional<SessionEvent> nextEvent() throws InterruptedException {
    if (!isLive()) {
      return events.next(patience);
    }
    return store.waitingCount() > 0 ? events.next(pace.pause()) : Optional.of(events.next());
  }

  /** What links still have to say is not heard any longer. Thread-safe. */
  public void stopListening() {
    events.end();
  }

  /** What the session shows. */
  public GuideState state() {
    return guide.state();
  }

  private boolean isAsking() {
    return guide.state().wanted().isPresent() || guide.state().question().isPresent();
  }

  private boolean deal(SessionEvent event) {
    try {
      return dealt(event);
    } catch (NothingMoreWaitsException full) {
      watcher.putAside(String.valueOf(full.getMessage()));
      return true;
    }
  }

  private boolean dealt(SessionEvent event) {
    if (event instanceof Received received) {
      received(received);
    } else if (event instanceof InputEnded) {
      inputOpen = false;
    } else if (event instanceof Typed typed) {
      return typedLine(typed.line().strip());
    } else {
      links.deal(event);
    }
    return true;
  }

  private void received(Received received) {
    String source = capture.received(received.link(), received.chunk());
    watcher.received(received.link(), received.chunk());
    feed.received(received.link(), received.chunk(), source).forEach(this::arrived);
  }

  private void arrived(MeterFeed.Arrival arrival) {
    Delivered delivered = arrival.delivered();
    switch (arrival.timing()) {
      case ON_TIME -> guide.value(delivered);
      case TOGETHER ->
          guide.late(
              delivered, "it came in one burst with others, so what it was aimed at is not known.");
      case BEHIND_ANOTHER -> guide.soonBehindAnother(delivered);
      case BEHIND_RETURN ->
          guide.late(delivered, "it came as the link came back, so it may be an old one.");
      case REPEATED -> guide.repeated(delivered);
    }
  }

  /** Returns false when the person quits. */
  private boolean typedLine(String line) {
    String word = line.toLowerCase(Locale.ROOT);
    Optional<GuideState.Question> question = guide.state().question();
    if (question.isPresent() && isChoice(word, question.get().choices().size())) {
      guide.choose(Integer.parseInt(word) - 1);
      return true;
    }
    if (question.isEmpty() && isAsked(word)) {
      typedValue(line);
      return true;
    }
    if (word.startsWith("go ")) {
      goTo(line.substring(3).strip());
      return true;
    }
    switch (word) {
      case "" -> measureNow();
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

  /** One digit is always meant as a choice; more only if there are so many. */
  private static boolean isChoice(String word, int choiceCount) {
    return choiceCount > 1
        && word.matches("[1-9][0-9]{0,2}")
        && (word.length() == 1 || Integer.parseInt(word) <= choiceCount);
  }

  /** Whether a word answers the question of the stage that is asked. */
  private boolean isAsked(String word) {
    return word.matches("y|yes|n|no")
        && guide.state().wanted().filter(Wanted::isQuestion).isPresent();
  }

  private void goTo(String name) {
    Wanted.named(all, name)
        .ifPresentOrElse(
            guide::goTo,
            () ->
                watcher.putAside(
                    "there is no target '" + name + "' at this stage" + nearest(name)));
  }

  private String nearest(String name) {
    List<String> known = all.stream().map(wanted -> wanted.target().text()).toList();
    return Nearest.of(name, known).map(target -> "; the nearest is " + target).orElse("");
  }

  private void measureNow() {
    for (Runnable act : onEmptyLine) {
      try {
        act.run();
      } catch (LinkLostException gone) {
        watcher.putAside(String.valueOf(gone.getMessage()));
      }
    }
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
      watcher.putAside(e.getMessage() + " Or type skip, back, undo, go TARGET or quit.");
    }
  }
}
