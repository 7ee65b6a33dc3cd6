package datumpeg.bridge.collect;

import datumpeg.analysis.quantity.Dimension;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.LineText;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.ble.GattNames;
import datumpeg.bridge.meter.MeterStream;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * From the bytes of a session's links to values, each with what its moment says of it. One thread.
 *
 * <p>Three spans, common practice, no source. Nobody measures two targets of one kind with one
 * meter within a second ({@link LinkTerms#apart}): such values were kept back somewhere, or come
 * from a meter that sends by itself. What comes within a second of a link's return may be old. A
 * message with the same bytes on the same channel within 50 ms was delivered twice; a serial port
 * has one stream of bytes and no messages, so there it does not apply.
 */
final class MeterFeed {
  private static final long REPEATED_NANOS = 50_000_000L;

  /** A meter that talks without end must not fill the screen. */
  private static final int SAID_A_SECOND = 5;

  private final SessionWatcher watcher;
  private final long apartNanos;
  private final Map<String, OneLink> links = new LinkedHashMap<>();

  MeterFeed(SessionWatcher watcher, Duration apart) {
    this.watcher = watcher;
    this.apartNanos = apart.toNanos();
  }

  /** What the moment at which a value came says of it. */
  enum Timing {
    ON_TIME,
    /** In one piece of bytes with others of its kind. */
    TOGETHER,
    /** Within a second of another of its kind. */
    BEHIND_ANOTHER,
    /** Within a second of the link's return. */
    BEHIND_RETURN,
    /** The same message as the one just before. */
    REPEATED
  }

  /** A value with its timing. */
  record Arrival(Delivered delivered, Timing timing) {}

  /** One link under its profile, and what came over it last. */
  private static final class OneLink {
    final String address;
    final String meter;
    final MeterStream stream;
    final Map<Dimension, Long> lastValueNanos = new EnumMap<>(Dimension.class);
    long returnedNanos;
    boolean returned;
    boolean wasLost;
    String lastMessage = "";
    long lastMessageNanos;
    long saidSinceNanos;
    int saidCount;

    OneLink(String address, String meter, MeterStream stream) {
      this.address = address;
      this.meter = meter;
      this.stream = stream;
    }
  }

  void add(String name, String address, String meter, MeterStream stream) {
    links.put(name, new OneLink(address, meter, stream));
  }

  /**
   * Takes the next bytes of a link.
   *
   * @param source what readings decoded from them name as their source
   */
  List<Arrival> received(String name, Chunk chunk, String source) {
    OneLink link = link(name);
    long overlong = link.stream.counts().overlong();
    List<Delivered> values = new ArrayList<>();
    List<Boolean> repeated = new ArrayList<>();
    link.stream.accept(
        chunk.bytes(),
        chunk.channel(),
        message -> {
          if (message.decoded() instanceof Measured measured) {
            values.add(delivered(link, chunk, message, measured, source));
            repeated.add(isRepeated(link, chunk, message));
          } else if (message.decoded() instanceof NotAReading other) {
            watcher.said(name, other, said(chunk, message, other));
            say(link, chunk, "not a reading: " + other.detail());
          }
        });
    if (link.stream.counts().overlong() > overlong) {
      say(link, chunk, "not a reading: a line too long for this meter");
    }
    List<Arrival> arrivals = new ArrayList<>();
    Set<Dimension> several = several(values);
    for (int i = 0; i < values.size(); i++) {
      Timing timing =
          repeated.get(i) ? Timing.REPEATED : timing(link, chunk, values.get(i), several);
      arrivals.add(new Arrival(values.get(i), timing));
    }
    return arrivals;
  }

  /** What the meter said: its own text, or in words where the bytes of a battery level are none. */
  private static String said(Chunk chunk, MeterStream.Message message, NotAReading other) {
    return chunk.channel().equals(GattNames.BATTERY_LEVEL)
        ? other.detail()
        : LineText.of(message.frame());
  }

  private static boolean isRepeated(OneLink link, Chunk chunk, MeterStream.Message message) {
    if (chunk.channel().equals(Chunk.ONLY_CHANNEL)) {
      return false;
    }
    String text = chunk.channel() + ' ' + message.frame().hex();
    boolean same =
        text.equals(link.lastMessage)
            && chunk.monotonicNanos() - link.lastMessageNanos <= REPEATED_NANOS;
    link.lastMessage = text;
    link.lastMessageNanos = chunk.monotonicNanos();
    return same;
  }

  /** The kinds of which one piece of bytes brought more than one value. */
  private static Set<Dimension> several(List<Delivered> together) {
    Set<Dimension> once = EnumSet.noneOf(Dimension.class);
    Set<Dimension> several = EnumSet.noneOf(Dimension.class);
    for (Delivered value : together) {
      if (!once.add(value.dimension())) {
        several.add(value.dimension());
      }
    }
    return several;
  }

  private Timing timing(OneLink link, Chunk chunk, Delivered value, Set<Dimension> several) {
    long now = chunk.monotonicNanos();
    @Nullable Long before = link.lastValueNanos.put(value.dimension(), now);
    if (before != null && now - before < apartNanos) {
      return Timing.BEHIND_ANOTHER;
    }
    if (several.contains(value.dimension())) {
      return Timing.TOGETHER;
    }
    return link.returned && now - link.returnedNanos < apartNanos
        ? Timing.BEHIND_RETURN
        : Timing.ON_TIME;
  }

  /** So many sentences a second for each link; how many were left out is said with the next. */
  private void say(OneLink link, Chunk chunk, String sentence) {
    if (chunk.monotonicNanos() - link.saidSinceNanos >= 1_000_000_000L || link.saidCount == 0) {
      int leftOut = link.saidCount - SAID_A_SECOND;
      link.saidSinceNanos = chunk.monotonicNanos();
      link.saidCount = 0;
      if (leftOut > 0) {
        watcher.putAside(leftOut + " more of " + link.address + " that were no readings");
      }
    }
    link.saidCount++;
    if (link.saidCount <= SAID_A_SECOND) {
      watcher.putAside(sentence);
    }
  }

  private static Delivered delivered(
      OneLink link, Chunk chunk, MeterStream.Message message, Measured measured, String source) {
    Measured read = link.stream.profile().read(measured);
    return new Delivered(
        read.valueText(),
        read.unit().symbol(),
        read.dimension(),
        read.siValue(),
        chunk.receivedAt().atOffset(ZoneOffset.UTC),
        link.meter,
        link.address,
        message.frame().hex(),
        source);
  }

  /** The link is lost: drops what was pending of a message, and returns it. */
  Bytes lost(String name) {
    OneLink link = link(name);
    link.lastValueNanos.clear();
    link.lastMessage = "";
    link.wasLost = true;
    return link.stream.lost();
  }

  /** The link is there, perhaps again: what is there for the first time has kept nothing back. */
  void returned(String name, long monotonicNanos) {
    OneLink link = link(name);
    link.returned = link.wasLost;
    link.returnedNanos = monotonicNanos;
  }

  /** The link as the person named it. */
  String address(String name) {
    return link(name).address;
  }

  private OneLink link(String name) {
    OneLink link = links.get(name);
    if (link == null) {
      throw new IllegalStateException("news of a link nobody announced: " + name);
    }
    return link;
  }
}
