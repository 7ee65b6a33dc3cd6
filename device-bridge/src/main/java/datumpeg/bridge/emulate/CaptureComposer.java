package datumpeg.bridge.emulate;

import datumpeg.bridge.emulate.EmulatedMeter.Chatter;
import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.link.Chunk;
import datumpeg.bridge.link.LinkClock;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.link.replay.CaptureHeader;
import datumpeg.bridge.link.replay.CaptureHeader.CapturedLink;
import datumpeg.bridge.link.replay.CaptureWriter;
import datumpeg.bridge.meter.MeterProfiles;
import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Composes whole captures from given readings, as a session of measuring would have written them:
 * for each reading the target asked for, the bytes of the meter in pieces, the acceptance. The same
 * seed gives the same bytes. One thread.
 */
public final class CaptureComposer {
  private static final Duration BETWEEN_PIECES = Duration.ofMillis(4);

  private final String job;
  private final String stage;
  private final long seed;
  private final Map<String, CapturedLink> links = new LinkedHashMap<>();
  private final Map<String, EmulatedMeter> meters = new LinkedHashMap<>();
  private final List<Step> steps = new ArrayList<>();

  public CaptureComposer(String job, String stage, long seed) {
    this.job = job;
    this.stage = stage;
    this.seed = seed;
  }

  private interface Step {
    void write(CaptureWriter writer, SetClock clock);
  }

  /**
   * Adds a meter on a serial link.
   *
   * @param link its name in the capture, for instance {@code L1}
   * @param address for instance {@code serial:/dev/ttyUSB0}
   * @param meter the user's name of the instrument
   */
  public CaptureComposer meter(
      String link, String address, String meter, Dialect dialect, Chatter chatter) {
    links.put(link, new CapturedLink(address, meter, MeterProfiles.GENERAL_TEXT_LINE.identity()));
    meters.put(link, new EmulatedMeter(dialect, chatter, seed + links.size()));
    return this;
  }

  /** Adds the keyboard, for typed values. */
  public CaptureComposer keyboard(String link) {
    links.put(link, new CapturedLink("keyboard:", null, null));
    return this;
  }

  /**
   * Adds one reading of a target, taken at a time.
   *
   * @param face 1 or 2, or null
   * @param siValue metres or radians
   * @throws IllegalArgumentException if there is no such meter
   */
  public CaptureComposer reading(
      String link, String target, @Nullable Integer face, double siValue, Instant time) {
    EmulatedMeter meter = meters.get(link);
    if (meter == null) {
      throw new IllegalArgumentException("no meter on link " + link);
    }
    steps.add(
        (writer, clock) -> {
          clock.set(time);
          writer.acted(Kind.TARGET, target, face, null, clock);
          for (Bytes piece : meter.inPieces(meter.send(siValue))) {
            clock.advance(BETWEEN_PIECES);
            writer.received(
                link, new Chunk(piece, clock.now(), clock.monotonicNanos(), Chunk.ONLY_CHANNEL));
          }
          clock.advance(Duration.ofSeconds(1));
          writer.acted(Kind.ACCEPT, target, face, null, clock);
        });
    return this;
  }

  /** Adds an act of the person, for instance a typed value, a skip or an undo. */
  public CaptureComposer act(
      Kind kind,
      @Nullable String target,
      @Nullable Integer face,
      @Nullable String text,
      Instant time) {
    steps.add(
        (writer, clock) -> {
          clock.set(time);
          writer.acted(kind, target, face, text, clock);
        });
    return this;
  }

  /** The capture's bytes. May be called once: the meters have then spoken. */
  public Bytes compose() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    SetClock clock = new SetClock();
    try (CaptureWriter writer =
        new CaptureWriter(out, "in memory", new CaptureHeader(job, stage, links))) {
      for (Step step : steps) {
        step.write(writer, clock);
      }
    }
    return Bytes.of(out.toByteArray());
  }

  /** A clock that stands where it was put. */
  private static final class SetClock implements LinkClock {
    private Instant now = Instant.EPOCH;
    private @Nullable Instant start;

    void set(Instant time) {
      now = time;
      if (start == null) {
        start = time;
      }
    }

    void advance(Duration step) {
      now = now.plus(step);
    }

    @Override
    public Instant now() {
      return now;
    }

    @Override
    public long monotonicNanos() {
      return start == null ? 0 : Duration.between(start, now).toNanos();
    }
  }
}
