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
import java.util.ArrayList;
import java.util.List;
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
  private final UnassignedStore values;
  private final String stage;
  private final String operator;
  private final SessionWatcher watcher;
  private final Consumer<Standing> standing;
  private final SessionEvents events;
  private final MeterFeed feed;
  private final LinkPresence links;
  private long recordedCount;
  private long valueCount;
  private long lostCount;
  private final WaitingNews waiting;
  private final UnassignedNews valuesWaiting;

  /**
   * How the session stands.
   *
   * @param recordedCount readings, those that wait among them
   * @param unassignedCount rows of the table
   * @param unassignedWaitingCount values without a target that the table's disk has not taken yet
   * @param lostCount values without a target that neither the table nor the queue took; only the
   *     capture has them, as far as it could be kept
   * @param waitingCount readings that the record has not taken yet
   * @param waitingOnDisk whether all that waits outlives the program
   * @param limit which limit is reached, in words; empty if none is
   */
  public record Standing(
      long recordedCount,
      int unassignedCount,
      int unassignedWaitingCount,
      long lostCount,
      int openTargetCount,
      int openLinkCount,
      int linkCount,
      int waitingCount,
      boolean waitingOnDisk,
      String limit) {}

  /** What a session works with. */
  record Parts(
      Collector collector,
      OptionalInt round,
      Sorting sorting,
      ReadingStore store,
      CaptureWriter capture,
      String captureName,
      UnassignedStore values,
      String stage,
      String operator,
      LinkClock clock,
      Duration pause,
      Duration apart) {}

  UnattendedSession(Parts parts, SessionWatcher watcher, Consumer<Standing> standing) {
    this.collector = parts.collector();
    this.collector.round(parts.round());
    this.sorting = parts.sorting();
    this.store = parts.store();
    this.pace = new DrainPace(parts.clock(), parts.pause());
    this.capture =
        new SessionCapture(
            parts.capture(), parts.captureName(), parts.clock(), parts.pause(), watcher);
    this.values = parts.values();
    this.waiting = new WaitingNews(parts.store(), watcher);
    this.valuesWaiting = new UnassignedNews(parts.values(), watcher);
    this.stage = parts.stage();
    this.operator = parts.operator();
    this.watcher = watcher;
    this.standing = standing;
    this.events = new SessionEvents(parts.clock());
    this.feed = new MeterFeed(watcher, parts.apart());
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
    values.drain();
    valuesWaiting.tell();
    standing.accept(standing());
    for (Optional<SessionEvent> event = next();
        !(event.isPresent() && event.get() instanceof Stop);
        event = next()) {
      event.ifPresent(this::deal);
      waiting.tell(); // first: a record that is locked takes seconds to say no again
      pace.tryAgain(waitingCount(), this::drain);
      if (!store.isRecordThere()) {
        capture.letGo();
        values.letGo();
      }
      waiting.tell();
      valuesWaiting.tell();
      standing.accept(standing());
    }
    drain();
    return standing();
  }

  private void drain() {
    store.drain();
    values.drain();
  }

  private int waitingCount() {
    return store.waitingCount() + values.waitingCount();
  }

  private Optional<SessionEvent> next() throws InterruptedException {
    return events.next(waitingCount() > 0 ? pace.pause() : LOOK);
  }

  private Standing standing() {
    return new Standing(
        recordedCount,
        values.rowCount(),
        values.waitingCount(),
        lostCount,
        sorting.openCount(),
        links.openCount(),
        links.count(),
        store.waitingCount(),
        store.isWaitingOnDisk() && values.isWaitingOnDisk(),
        limit());
  }

  private String limit() {
    List<String> reached = new ArrayList<>();
    if (store.waitingCount() >= ReadingStore.LARGEST_WAITING) {
      reached.add(
          store.waitingCount()
              + " readings wait, the most that may: further ones become values without a target");
    }
    if (values.waitingCount() >= UnassignedStore.LARGEST_WAITING) {
      reached.add(
          values.waitingCount()
              + " values without a target wait, the most that may: further ones are lost but for"
              + " the capture");
    }
    if (values.isTableFull()) {
      reached.add(
          "the table has "
              + values.rowCount()
              + " rows, the most that may be: further values without a target are in the capture"
              + " only");
    }
    return String.join("; ", reached);
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
        values.keep(
            new UnassignedTable.Row(
                stage,
                quantities.size() == 1 ? quantities.iterator().next() : "",
                number(delivered),
                delivered.dimension() == Dimension.ANGLE ? "deg" : "m",
                DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(delivered.readAt()),
                operator,
                note(delivered, why)));
    lostCount += kept ? 0 : 1;
    aside(
        said(delivered)
            + (kept ? " waits for a person: " : " has no target, and is not taken: ")
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

  /** With the number of the value, so that no two rows are the same. */
  private String note(Delivered delivered, String why) {
    return "received as '%s' from %s (%s, value %d): %s"
        .formatted(said(delivered), delivered.link(), delivered.source(), valueCount, why);
  }

  private void aside(String why) {
    capture.acted(Kind.HELD, null, ActText.ofValue(valueCount));
    watcher.putAside(why);
  }

  private static String said(Delivered delivered) {
    return (delivered.valueText() + " " + delivered.unitText()).strip();
  }
}
