package datumpeg.desktop.measure;

import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.control.Choice;
import datumpeg.desktop.text.Standing;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** Where sessions are begun. What is told comes on the thread of the screen. */
public interface Sessions extends AutoCloseable {

  /** Looks what can be measured of a job, and with which meters. */
  void look(String job, Consumer<Choices> found);

  /** Looks how each target of the stage stands that a session measures. */
  void targets(SessionWish wish, Consumer<TargetStands> found);

  /**
   * Listens for Bluetooth LE meters for a few seconds. It connects to none: what is connected to is
   * only what a session's wish names.
   *
   * @param heard is told several times, the last time when the listening is over
   */
  void listen(Consumer<Heard> heard);

  /** No more is told of what is heard. */
  void stopListening();

  /** Begins a session; it is told on until it has ended. */
  Session begin(SessionWish wish, Told told);

  /** Ends what runs; waits a few seconds for it at most. */
  @Override
  void close();

  /** A session that runs. Everything returns at once. */
  interface Session {
    /** As if a person had typed the line in a terminal. */
    void typed(String line);

    /** Ends it; what was recorded stays. */
    void end();
  }

  /** Is told how a session goes. */
  interface Told {
    void stands(SessionShot shot);

    /**
     * It has ended, or could not begin.
     *
     * @param trouble a sentence on what is not as it should be; empty if all is well
     * @param recordedCount readings stored and not withdrawn
     */
    void ended(String trouble, long recordedCount);
  }

  /**
   * What can be measured, and with what.
   *
   * @param stages of the job, in the order of the work
   * @param ports the serial links of this machine now
   * @param profiles of meters, by id
   * @param trouble why the job cannot be measured; empty if it can
   */
  record Choices(
      String job,
      List<StageChoice> stages,
      List<Port> ports,
      List<String> profiles,
      String trouble) {
    public Choices {
      stages = List.copyOf(stages);
      ports = List.copyOf(ports);
      profiles = List.copyOf(profiles);
    }
  }

  /**
   * A stage that can be measured.
   *
   * @param openCount of its readings, how many are still to be taken
   * @param targets that can be watched, in walking order: their texts, and what they are called
   */
  record StageChoice(String id, int openCount, int allCount, List<Choice> targets) {
    public StageChoice {
      targets = List.copyOf(targets);
    }
  }

  /**
   * How the targets of a stage stand.
   *
   * @param targets in walking order, questions last
   * @param questions their texts by their names
   * @param trouble why it cannot be said; empty if it can
   */
  record TargetStands(List<TargetStand> targets, Map<String, String> questions, String trouble) {
    public TargetStands {
      targets = List.copyOf(targets);
      questions = Map.copyOf(questions);
    }
  }

  /**
   * How a target stands.
   *
   * @param standing the gravest of what follows from it; no limit where it is measured and nothing
   *     follows yet
   * @param newestSi its newest reading, in metres or radians, 1 and 0 for yes and no
   */
  record TargetStand(Wanted wanted, Standing standing, OptionalDouble newestSi) {}

  /**
   * The Bluetooth LE meters heard so far.
   *
   * @param doneSeconds of all that it takes
   * @param trouble why nothing can be heard; empty if it can
   */
  record Heard(List<Port> meters, long doneSeconds, long allSeconds, String trouble) {
    public Heard {
      meters = List.copyOf(meters);
    }

    boolean isOver() {
      return doneSeconds >= allSeconds;
    }
  }

  /** A link that is there, and what the machine or the meter says of it, safe to show. */
  record Port(String address, String description) {}
}
