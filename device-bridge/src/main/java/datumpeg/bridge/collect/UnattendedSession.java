package datumpeg.bridge.collect;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.bridge.collect.MeterFeed.Arrival;
import datumpeg.bridge.collect.MeterFeed.Timing;
import datumpeg.bridge.collect.SessionEvent.Received;
import datumpeg.bridge.collect.SessionEvent.Stop;
import datumpeg.bridge.exchange.UnassignedTable;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.ReturningLinkListener;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.meter.MeterStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Takes what links deliver with nobody there. A value whose target is beyond doubt becomes its
 * reading; every other goes into a table that a person completes later. Runs on the thread that
 * calls {@link #run}.
 */
public final class UnattendedSession {
  private static final Duration LOOK = Duration.ofSeconds(30);

  private final Collector collector;
  private final Sorting sorting;
  private final ReadingStore store;
  private final DrainPace pace;
  private final SessionCapture capture;
  private final UnassignedTable table;
  private final String stage;
  private final String operator;
  private final SessionWatcher watcher;
  private final Consumer<Standing> standing;
  private final SessionEvents events;
  private final MeterFeed feed;
  private final LinkPresence links;
  private long recordedCount;
  private long valueCount;
  private long lostFromTable;
  private final WaitingNews waiting;

  /**
   * How the session stands.
   *
   * @param unassignedCount rows of the table
   * @param captureOnlyCount values without a target that are not in the table: it takes no more, or
   *     the disk none of them yet; only the capture has them
   */
  public record Standing(
      long recordedCount,
      int unassignedCount,
      long captureOnlyCount,
      int openTargetCount,
      int openLinkCount,
      int linkCount,
      int waitingCount,
      boolean waitingOnDisk) {}

  /** What a session works with. */
  record Parts(
      Collector collector,
      OptionalInt round,
      Sorting sorting,
      ReadingStore store,
      CaptureWriter capture,
      String captureName,
      UnassignedTable table,
      String stage,
      String operator,
      LinkClock clock) {}

  UnattendedSession(Parts parts, SessionWatcher watcher, Consumer<Standing> standing) {
    this.collector = parts.collector();
    this.collector.round(parts.round());
    this.sorting = parts.sorting();
    this.store = parts.store();
    this.pace = new DrainPace(parts.store(), parts.clock());
    this.capture = new SessionCapture(parts.capture(), parts.captureName(), parts.clock(), watcher);
    this.table = parts.table();
    this.waiting = new WaitingNews(parts.store(), watcher);
    this.stage = parts.stage();
    this.operator = parts.operator();
    this.watcher = watcher;
    this.standing = standing;
    this.events = new SessionEvents(parts.clock());
    this.feed = new MeterFeed(watcher);
    this.links = new LinkPresence(feed, watcher);
  }

  ReturningLinkListener listenerFor(String name, String address, String meter, MeterStream stream) {
    feed.add(name, address, meter, stream);
    links.expect(name);
    return events.listener(name);
  }

  /** Asks the session to end when it has dealt with what came before. Thread-safe. */
  public void stop() {
    events.add(new Stop());
  }

  void stopListening() {
    events.end();
  }

  /**
   * Takes values until it is stopped.
   *
   * @throws InterruptedException if the thread is interrupted; everything acknowledged is recorded
   */
  Standing run() throws InterruptedException {
    standing.accept(standing());
    for (Optional<SessionEvent> event = next();
        !(event.isPresent() && event.get() instanceof Stop);
        event = next()) {
      event.ifPresent(this::deal);
      waiting.tell(); // first: a record that is locked takes seconds to say no again
      pace.tryAgain();
      if (!store.isRecordThere()) {
        capture.letGo();
      }
      if (event.isEmpty()) {
        table.drain();
      }
      waiting.tell();
      standing.accept(standing());
    }
    store.drain();
    table.drain();
    return standing();
  }

  private Optional<SessionEvent> next() throws InterruptedException {
    boolean waits = store.waitingCount() + table.waitingCount() > 0;
    return events.next(waits ? DrainPace.PAUSE : LOOK);
  }

  private Standing standing() {
    return new Standing(
        recordedCount,
        table.rowCount(),
        lostFromTable + table.waitingCount(),
        sorting.openCount(),
        links.openCount(),
        links.count(),
        store.waitingCount(),
        store.isWaitingOnDisk());
  }

  private void deal(SessionEvent event) {
    if (event instanceof Received received) {
      String source = capture.received(received.link(), received.chunk());
      watcher.received(received.link(), received.chunk());
      feed.received(received.link(), received.chunk(), source).forEach(this::arrived);
    } else {
      links.deal(event);
    }
  }

  private void arrived(Arrival arrival) {
    valueCount++;
    Delivered delivered = arrival.delivered();
    Sorting.Place place = sorting.place(delivered);
    if (arrival.timing() == Timing.REPEATED) {
      aside(said(delivered) + " came twice: the same message again");
    } else if (place.found() && isTrusted(arrival.timing())) {
      takeOrKeep(delivered, place);
    } else {
      keepForLater(delivered, place, isTrusted(arrival.timing()) ? place.why() : late(place));
    }
  }

  private static boolean isTrusted(Timing timing) {
    return timing == Timing.ON_TIME;
  }

  private static String late(Sorting.Place place) {
    return "it came in one burst with others, or as the link came back"
        + (place.why().isEmpty() ? "" : "; " + place.why());
  }

  private void takeOrKeep(Delivered delivered, Sorting.Place place) {
    try {
      take(delivered, place.targets().get(0));
    } catch (NothingMoreWaitsException full) {
      keepForLater(delivered, place, String.valueOf(full.getMessage()));
    }
  }

  private void take(Delivered delivered, Wanted wanted) {
    capture.acted(Kind.TARGET, wanted, ActText.ofRound(collector.roundOf(wanted.target())));
    collector.goTo(wanted.target(), wanted.face());
    collector.offer(delivered);
    collector
        .accept()
        .ifPresent(
            reading -> {
              capture.acted(Kind.ACCEPT, wanted, ActText.ofValue(valueCount));
              sorting.taken(wanted);
              recordedCount++;
              if (store.waitingCount() == 0) {
                watcher.recorded(reading);
              }
            });
  }

  private void keepForLater(Delivered delivered, Sorting.Place place, String why) {
    Set<String> quantities =
        place.targets().stream()
            .map(wanted -> wanted.target().quantity().text())
            .collect(Collectors.toSet());
    boolean kept =
        table.add(
            new UnassignedTable.Row(
                stage,
                quantities.size() == 1 ? quantities.iterator().next() : "",
                number(delivered),
                delivered.dimension() == Dimension.ANGLE ? "deg" : "m",
                DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(delivered.readAt()),
                operator,
                note(delivered, why)));
    lostFromTable += kept ? 0 : 1;
    aside(
        said(delivered)
            + (kept ? " waits for a person: " : " has no target, and the table is full: ")
            + why);
  }

  /** Micrometres and 0.000001°: finer than any meter that such a table is for. */
  private static String number(Delivered delivered) {
    double value =
        delivered.dimension() == Dimension.ANGLE
            ? StrictMath.toDegrees(delivered.valueSi())
            : delivered.valueSi();
    return BigDecimal.valueOf(value)
        .setScale(6, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String note(Delivered delivered, String why) {
    return "received as '%s' from %s (%s): %s"
        .formatted(said(delivered), delivered.link(), delivered.source(), why);
  }

  private void aside(String why) {
    capture.acted(Kind.HELD, null, ActText.ofValue(valueCount));
    watcher.putAside(why);
  }

  private static String said(Delivered delivered) {
    return (delivered.valueText() + " " + delivered.unitText()).strip();
  }
}
