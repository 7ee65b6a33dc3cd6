package datumpeg.bridge.collect;

import datumpeg.bridge.record.entry.ReadingEntry;
import java.util.List;
import java.util.Optional;

/**
 * All that a screen or a terminal shows of guided measuring at one moment. Immutable.
 *
 * @param wanted what is asked for; empty when the list is done
 * @param next what is asked for after it, as things stand; empty when it is the last
 * @param open targets still to be measured, what is asked for among them
 * @param skippedCount targets left out so far
 * @param last the reading taken last
 * @param question what must be answered before anything else
 */
public record GuideState(
    Optional<Wanted> wanted,
    Optional<Wanted> next,
    List<Wanted> open,
    int skippedCount,
    Optional<ReadingEntry> last,
    Optional<Question> question) {
  public GuideState {
    open = List.copyOf(open);
  }

  public int openCount() {
    return open.size();
  }

  /**
   * A value that is held.
   *
   * @param delivered the value
   * @param why it was not simply taken, in a sentence
   * @param choices the targets it may be a reading of, best first; the first is what {@code accept}
   *     means. Empty if it can be none
   */
  public record Question(Delivered delivered, String why, List<Wanted> choices) {
    public Question {
      choices = List.copyOf(choices);
    }
  }
}
