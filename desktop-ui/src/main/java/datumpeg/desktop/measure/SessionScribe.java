package datumpeg.desktop.measure;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.measuring.TargetWords;
import datumpeg.bridge.collect.GuideState;
import datumpeg.bridge.collect.LinkState;
import datumpeg.bridge.collect.LiveDeviation;
import datumpeg.bridge.collect.MeterLink;
import datumpeg.bridge.collect.SessionWatcher;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.frame.ByteRows;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkLostException;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.desktop.measure.SessionShot.LinkStand;
import datumpeg.desktop.measure.SessionShot.Said;
import datumpeg.desktop.text.Words;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** Writes down how a session goes and hands over each new state. The session's one thread. */
final class SessionScribe implements SessionWatcher {
  private static final int MOST_ROWS = 60;
  private static final int MOST_SAID = 8;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss.SSS", Locale.ROOT);

  private final Words words;
  private final ZoneId zone;
  private final SetOut setOut;
  private final Map<String, String> questions;
  private final Optional<LiveDeviation> watched;
  private final Consumer<SessionShot> publish;
  private final Map<String, LinkStand> links = new LinkedHashMap<>();
  private final Deque<String> bytes = new ArrayDeque<>();
  private final Deque<Said> said = new ArrayDeque<>();
  private final boolean canTell;
  private long takenCount;
  private long heldCount;
  private int waitingCount;
  private String waitingWhy = "";

  SessionScribe(
      Words words,
      ZoneId zone,
      SetOut setOut,
      Map<String, String> questions,
      Optional<LiveDeviation> watched,
      List<MeterLink> meters,
      Consumer<SessionShot> publish) {
    this.words = words;
    this.zone = zone;
    this.setOut = setOut;
    this.questions = Map.copyOf(questions);
    this.watched = watched;
    this.publish = publish;
    this.canTell = meters.stream().anyMatch(MeterLink::canBeTold);
    for (MeterLink meter : meters) {
      links.put(meter.name(), new LinkStand(meter.name(), meter.address().text(), 0, "", ""));
    }
  }

  @Override
  public void stands(GuideState state) {
    publish.accept(
        new SessionShot(
            setOut,
            questions,
            state,
            watched,
            new ArrayList<>(links.values()),
            canTell,
            new ArrayList<>(bytes),
            new ArrayList<>(said),
            takenCount,
            heldCount,
            waitingCount,
            waitingWhy));
  }

  @Override
  public void asking(Wanted wanted, int leftAfterThis) {
    // The state that follows says it.
  }

  @Override
  public void recorded(ReadingEntry reading) {
    takenCount++;
    say(Said.Kind.RECORDED, words.text("measure.recorded", value(reading), target(reading)));
  }

  @Override
  public void withdrawn(ReadingEntry reading) {
    say(Said.Kind.WITHDRAWN, words.text("measure.withdrawn", value(reading), target(reading)));
  }

  @Override
  public void held(GuideState.Question question) {
    heldCount++;
  }

  @Override
  public void waiting(int count, String why) {
    waitingCount = count;
    waitingWhy = why;
  }

  @Override
  public void drained() {
    waitingCount = 0;
    waitingWhy = "";
    say(Said.Kind.RECORDED, words.text("measure.drained"));
  }

  @Override
  public void captureEnded(String why) {
    say(Said.Kind.TROUBLE, words.text("measure.capture-ended", why));
  }

  @Override
  public void captureGoesOn() {
    say(Said.Kind.RECORDED, words.text("measure.capture-goes-on"));
  }

  @Override
  public void putAside(String why) {
    say(Said.Kind.PUT_ASIDE, words.text("measure.put-aside", why));
  }

  @Override
  public void lost(LinkLostException loss, int droppedByteCount) {
    String why = String.valueOf(loss.getMessage());
    links.replaceAll((name, link) -> link.address().equals(loss.address()) ? link.lost(why) : link);
    say(Said.Kind.TROUBLE, why);
  }

  @Override
  public void link(String link, LinkState state, String sentence) {
    if (state != LinkState.SILENT) {
      String loss = state == LinkState.AWAY ? sentence : "";
      links.computeIfPresent(link, (name, stand) -> stand.lost(loss));
    }
    say(state == LinkState.RETURNED ? Said.Kind.RECORDED : Said.Kind.TROUBLE, sentence);
  }

  @Override
  public void received(String link, Chunk chunk) {
    String time = TIME.format(chunk.receivedAt().atZone(zone));
    for (String row : ByteRows.of(chunk.bytes())) {
      bytes.addLast(time + "  " + link + "  " + row);
    }
    while (bytes.size() > MOST_ROWS) {
      bytes.removeFirst();
    }
    links.computeIfPresent(
        link,
        (name, stand) ->
            new LinkStand(
                name,
                stand.address(),
                stand.byteCount() + chunk.bytes().length(),
                stand.status(),
                stand.loss()));
  }

  @Override
  public void said(String link, NotAReading other, String text) {
    if (other.reason() == Reason.STATUS) {
      links.computeIfPresent(
          link,
          (name, stand) ->
              new LinkStand(
                  name,
                  stand.address(),
                  stand.byteCount(),
                  text.replaceAll("\\p{C}", "?").strip(),
                  stand.loss()));
    }
  }

  private void say(Said.Kind kind, String sentence) {
    said.addLast(new Said(kind, sentence));
    while (said.size() > MOST_SAID) {
      said.removeFirst();
    }
  }

  private static String target(ReadingEntry reading) {
    MeasuredQuantity quantity = MeasuredQuantity.ofText(reading.quantity()).orElseThrow();
    return TargetWords.of(Target.parse(quantity, reading.target()));
  }

  private static String value(ReadingEntry reading) {
    return (reading.value() + " " + reading.unit()).strip();
  }
}
