package datumpeg.desktop.measure;

import datumpeg.analysis.building.SetOut;
import datumpeg.bridge.collect.GuideState;
import datumpeg.bridge.collect.LiveDeviation;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A session at one moment: all that the screen shows of it. Immutable.
 *
 * @param setOut the plan it is measured by
 * @param questions of the stage: the texts by their names
 * @param guide what is asked for, held and was taken last
 * @param watched what a live value says beside its limits; empty unless one target is watched
 * @param links one for each meter
 * @param canTell whether a meter measures when it is told to
 * @param bytes the newest raw bytes, the oldest first
 * @param said what happened, the newest last
 * @param takenCount readings stored so far; a tone goes with each
 * @param heldCount values held so far; another tone goes with each
 * @param waitingCount readings that the record could not take yet
 * @param waitingWhy why they wait
 */
public record SessionShot(
    SetOut setOut,
    Map<String, String> questions,
    GuideState guide,
    Optional<LiveDeviation> watched,
    List<LinkStand> links,
    boolean canTell,
    List<String> bytes,
    List<Said> said,
    long takenCount,
    long heldCount,
    int waitingCount,
    String waitingWhy) {
  public SessionShot {
    questions = Map.copyOf(questions);
    links = List.copyOf(links);
    bytes = List.copyOf(bytes);
    said = List.copyOf(said);
  }

  /**
   * How a meter's link stands.
   *
   * @param byteCount received so far
   * @param status what the meter said of itself last, such as its battery; may be empty
   * @param loss why it is gone; empty while it is not
   */
  public record LinkStand(String name, String address, long byteCount, String status, String loss) {
    /** The same, gone for this reason; there again for none. */
    LinkStand lost(String why) {
      return new LinkStand(name, address, byteCount, status, why);
    }

    boolean isLost() {
      return !loss.isEmpty();
    }
  }

  /** Something that happened, in a sentence. */
  public record Said(Kind kind, String sentence) {
    /** What it was. */
    public enum Kind {
      RECORDED,
      WITHDRAWN,
      HELD,
      PUT_ASIDE,
      TROUBLE
    }
  }
}
