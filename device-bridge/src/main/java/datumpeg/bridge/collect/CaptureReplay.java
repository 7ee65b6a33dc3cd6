package datumpeg.bridge.collect;

import datumpeg.analysis.building.SetOut;
import datumpeg.analysis.measuring.Target;
import datumpeg.analysis.quantity.QuantityFormatException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.link.replay.CaptureEntry;
import datumpeg.bridge.link.replay.CaptureEntry.Act;
import datumpeg.bridge.link.replay.CaptureEntry.Direction;
import datumpeg.bridge.link.replay.CaptureEntry.Transfer;
import datumpeg.bridge.link.replay.CaptureHeader;
import datumpeg.bridge.link.replay.CaptureReader;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.MeterStream;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * Plays a capture into a collector: its bytes through the same decoding, its acts in place of the
 * person. Without acts the targets are taken in the order of the measuring list. One thread.
 */
public final class CaptureReplay {
  private final Path file;
  private final Collector collector;
  private final TargetText targets;
  private final MeterProfiles profiles;
  private final Map<String, MeterStream> streams = new HashMap<>();
  private final List<ReadingEntry> stored = new ArrayList<>();
  private final Map<Long, Delivered> undecided = new HashMap<>();
  private long valueCount;
  private long withdrawn;

  private CaptureReplay(
      Path file, Collector collector, TargetText targets, MeterProfiles profiles) {
    this.file = file;
    this.collector = collector;
    this.targets = targets;
    this.profiles = profiles;
  }

  /**
   * What a replay came to.
   *
   * @param stored readings, each acknowledged after its commit
   * @param putAside values that were no reading of the target asked for, or were held
   * @param withdrawn readings undone again by the person
   * @param otherFrames frames that were no readings: status lines, noise
   * @param tornLine the number of a last line cut short, which was left out
   */
  public record Played(
      List<ReadingEntry> stored,
      long putAside,
      long withdrawn,
      long otherFrames,
      OptionalLong tornLine) {
    public Played {
      stored = List.copyOf(stored);
    }
  }

  /**
   * What a capture is, found by reading all of it before anything is stored.
   *
   * @param guided whether it holds a person's acts
   */
  public record Surveyed(CaptureHeader header, boolean guided) {}

  /**
   * Reads the whole capture.
   *
   * @throws InputException if it is damaged anywhere but in its last line
   */
  public static Surveyed survey(Path file) {
    try (CaptureReader reader = CaptureReader.open(file)) {
      boolean guided = false;
      for (Optional<CaptureEntry> next = reader.next(); next.isPresent(); next = reader.next()) {
        guided |= next.get() instanceof Act;
      }
      return new Surveyed(reader.header(), guided);
    }
  }

  /**
   * A replay into a collector.
   *
   * @param list what the collector asks for
   * @param profiles that the capture may name
   */
  public static CaptureReplay of(
      Path file, Collector collector, SetOut setOut, List<Wanted> list, MeterProfiles profiles) {
    return new CaptureReplay(file, collector, new TargetText(setOut, list), profiles);
  }

  /** Plays it to its end. */
  public Played play(Surveyed surveyed) {
    try (CaptureReader reader = CaptureReader.open(file)) {
      for (Optional<CaptureEntry> next = reader.next(); next.isPresent(); next = reader.next()) {
        CaptureEntry entry = next.get();
        if (entry instanceof Transfer transfer && transfer.direction() == Direction.RX) {
          received(transfer, surveyed, reader.lineNumber());
        } else if (entry instanceof Act act) {
          acted(act, reader.lineNumber());
        }
      }
      long others =
          streams.values().stream()
              .flatMap(stream -> stream.counts().notReadings().values().stream())
              .mapToLong(Long::longValue)
              .sum();
      return new Played(
          stored, valueCount - stored.size(), withdrawn, others, reader.tornLineNumber());
    }
  }

  private void received(Transfer transfer, Surveyed surveyed, long line) {
    CaptureHeader.@Nullable CapturedLink link = surveyed.header().links().get(transfer.link());
    String meter = link == null || link.meter() == null ? "" : link.meter();
    MeterStream stream =
        streams.computeIfAbsent(
            transfer.link(),
            name -> new MeterStream(profile(link == null ? null : link.profile())));
    for (MeterStream.Message message : stream.accept(transfer.bytes(), transfer.channel())) {
      if (message.decoded() instanceof Measured measured) {
        Measured read = stream.profile().read(measured);
        offer(
            new Delivered(
                read.valueText(),
                read.unit().symbol(),
                read.dimension(),
                read.siValue(),
                transfer.time().atOffset(ZoneOffset.UTC),
                meter,
                link == null ? transfer.link() : link.link(),
                message.frame().hex(),
                source(line)));
        if (!surveyed.guided()) {
          accept();
        }
      }
    }
  }

  private MeterProfile profile(@Nullable String identity) {
    if (identity == null) {
      return MeterProfiles.GENERAL_TEXT_LINE;
    }
    int at = identity.indexOf('@');
    MeterProfile profile = profiles.named(at < 0 ? identity : identity.substring(0, at));
    if (at >= 0 && !profile.identity().equals(identity)) {
      throw new InputException(
          "The capture was taken with the meter profile "
              + identity
              + ", this program has "
              + profile.identity()
              + "; its values could differ, so it is not replayed.");
    }
    return profile;
  }

  private void offer(Delivered delivered) {
    valueCount++;
    undecided.put(valueCount, delivered);
    collector.offer(delivered);
  }

  /** The value an act is about: the one it numbers, else the newest that fits. */
  private void accept(Act act, long line) {
    Optional<Delivered> numbered = numbered(act, line);
    if (numbered.isPresent() && collector.offer(numbered.get()) != Offer.WAITING) {
      throw new InputException(
          file + ", line " + line + ": the value taken is not one its target can have.");
    }
    accept();
  }

  private Optional<Delivered> numbered(Act act, long line) {
    OptionalLong number = ActText.valueNumber(act);
    if (number.isEmpty()) {
      return Optional.empty();
    }
    Delivered delivered = undecided.remove(number.getAsLong());
    if (delivered == null) {
      throw new InputException(
          "%s, line %d: it speaks of value %d, which has not come or was dealt with before."
              .formatted(file, line, number.getAsLong()));
    }
    return Optional.of(delivered);
  }

  private void accept() {
    collector.accept().ifPresent(stored::add);
  }

  private void acted(Act act, long line) {
    switch (act.kind()) {
      case TARGET -> {
        collector.round(ActText.round(act));
        collector.goTo(target(act, line), act.face() == null ? 0 : act.face());
      }
      case ACCEPT -> accept(act, line);
      case SKIP -> collector.skip();
      case BACK -> collector.back();
      case UNDO -> withdrawn += collector.undo().isPresent() ? 1 : 0;
      case HELD -> numbered(act, line);
      case TYPED -> typed(act, line);
    }
  }

  private Target target(Act act, long line) {
    String text = act.target() == null ? "" : act.target();
    try {
      return targets.find(text);
    } catch (IllegalArgumentException e) {
      throw new InputException(
          file
              + ", line "
              + line
              + ": the target '"
              + text
              + "' is not one of this job: "
              + e.getMessage(),
          e);
    }
  }

  private void typed(Act act, long line) {
    String text = act.text() == null ? "" : act.text();
    try {
      offer(TypedValue.ofAct(text).delivered(time(act.time()), source(line)));
    } catch (QuantityFormatException e) {
      throw new InputException(file + ", line " + line + ": " + e.getMessage(), e);
    }
  }

  private static OffsetDateTime time(Instant instant) {
    return instant.atOffset(ZoneOffset.UTC);
  }

  private String source(long line) {
    @Nullable Path name = file.getFileName();
    return "replay " + (name == null ? file : name) + " line " + line;
  }
}
