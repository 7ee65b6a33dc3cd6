package datumpeg.bridge.meter.learn;

import datumpeg.bridge.link.RegisterBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which profiles fit the readings of an unknown meter. Pure; total in the bytes; the time is
 * bounded by the number of readings, whatever was sent.
 */
public final class Learning {
  /** So many readings are asked for before anything is proposed. */
  public static final int READINGS_ASKED = 3;

  private final Optional<RegisterBlock> block;

  private Learning(Optional<RegisterBlock> block) {
    this.block = block;
  }

  /** Of a meter that sends by itself or when its button is pressed. */
  public static Learning ofSender() {
    return new Learning(Optional.empty());
  }

  /** Of a station whose registers were asked for. */
  public static Learning ofRegisters(RegisterBlock block) {
    return new Learning(Optional.of(block));
  }

  /**
   * The profiles under which each reading's last value is what the display showed, simplest kind of
   * language first and only that: none of them says more than another about these readings.
   *
   * <p>A word that was the same in all readings is taken as part of the line: a line with another
   * is then no reading.
   *
   * @param all of one dimension; none are proposed for lengths among angles
   */
  public List<Proposal> proposals(List<Shown> all) {
    if (all.isEmpty() || !isOneDimension(all) || isAllZero(all)) {
      return List.of();
    }
    List<Proposal> ofChannels = ChannelSearch.find(all, block);
    if (!ofChannels.isEmpty()) {
      return ofChannels;
    }
    List<Proposal> ofText = TextSearch.find(all);
    if (!ofText.isEmpty()) {
      return ofText;
    }
    List<Proposal> ofLines = PatternSearch.find(all);
    return ofLines.isEmpty() ? new ArrayList<>(FrameSearch.find(all)) : ofLines;
  }

  private static boolean isOneDimension(List<Shown> all) {
    return all.stream().map(shown -> shown.displayed().dimension()).distinct().count() == 1;
  }

  /** Zeros stand everywhere: they say nothing. */
  private static boolean isAllZero(List<Shown> all) {
    return all.stream().allMatch(shown -> shown.displayed().siValue() == 0);
  }
}
