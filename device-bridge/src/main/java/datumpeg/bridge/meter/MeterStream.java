package datumpeg.bridge.meter;

import datumpeg.bridge.frame.Bytes;
import datumpeg.bridge.frame.Decoded;
import datumpeg.bridge.frame.Decoded.Measured;
import datumpeg.bridge.frame.Decoded.NotAReading;
import datumpeg.bridge.frame.Decoded.Reason;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * The bytes of one link under one profile: cut into frames, decoded, counted. A damaged or foreign
 * frame is a counted result, never an exception. One thread.
 */
public final class MeterStream {
  private final MeterProfile profile;
  private final ChannelMessages messages;
  private final Map<Reason, Long> notReadingCounts = new EnumMap<>(Reason.class);
  private long readingCount;
  private long incompleteCount;

  public MeterStream(MeterProfile profile) {
    this.profile = profile;
    this.messages = new ChannelMessages(profile.language());
  }

  /** One frame and what it turned out to be. Shares the bytes it came in. Immutable. */
  public static final class Message {
    private final Bytes bytes;
    private final int from;
    private final int to;
    private final Decoded decoded;

    Message(Bytes frame, Decoded decoded) {
      this(frame, 0, frame.length(), decoded);
    }

    /** A message whose frame stands among these bytes, {@code to} exclusive. */
    Message(Bytes bytes, int from, int to, Decoded decoded) {
      this.bytes = bytes;
      this.from = from;
      this.to = to;
      this.decoded = decoded;
    }

    /** As received, without its terminator, never altered. */
    public Bytes frame() {
      return bytes.slice(from, to);
    }

    public Decoded decoded() {
      return decoded;
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Message that
          && frame().equals(that.frame())
          && decoded.equals(that.decoded);
    }

    @Override
    public int hashCode() {
      return Objects.hash(frame(), decoded);
    }

    @Override
    public String toString() {
      return frame() + " " + decoded;
    }
  }

  public MeterProfile profile() {
    return profile;
  }

  /**
   * Takes the next bytes; returns the messages they complete, in order.
   *
   * @param channel which of the link's channels they came on
   */
  public List<Message> accept(Bytes bytes, String channel) {
    List<Message> complete = new ArrayList<>();
    accept(bytes, channel, complete::add);
    return complete;
  }

  /**
   * Takes the next bytes; gives the messages they complete, in order, to one who keeps what of them
   * is needed.
   *
   * @param channel which of the link's channels they came on
   */
  public void accept(Bytes bytes, String channel, Consumer<Message> taker) {
    messages.accept(
        bytes,
        channel,
        message -> {
          count(message.decoded());
          taker.accept(message);
        });
  }

  private void count(Decoded decoded) {
    if (decoded instanceof Measured) {
      readingCount++;
    } else if (decoded instanceof NotAReading other) {
      notReadingCounts.merge(other.reason(), 1L, Long::sum);
    }
  }

  /** The link was lost: drops what was pending, counts it as incomplete if it was anything. */
  public Bytes lost() {
    Bytes pending = messages.discardPending();
    if (!pending.isEmpty()) {
      incompleteCount++;
    }
    return pending;
  }

  /** What came so far. */
  public Counts counts() {
    return new Counts(readingCount, notReadingCounts, messages.overflowCount(), incompleteCount);
  }

  /**
   * What came over a stream.
   *
   * @param readings frames that were readings
   * @param notReadings other frames, by reason
   * @param overlong lines dropped because they were too long
   * @param incomplete lines cut by the loss of the link
   */
  public record Counts(
      long readings, Map<Reason, Long> notReadings, long overlong, long incomplete) {
    public Counts {
      notReadings = Map.copyOf(notReadings);
    }
  }
}
