package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SiteRecord;
import java.util.List;
import java.util.OptionalInt;

/**
 * What is still to be measured of a stage: what no reading answers yet, or, when all is measured,
 * what would decide something.
 *
 * @param all that the stage asks for
 * @param asked what a session that begins now asks for, in order; empty when nothing would help
 * @param openCount how many of all no reading answers yet
 */
public record StageWork(
    Stage stage, List<Wanted> all, List<Wanted> asked, int openCount, OptionalInt round) {
  public StageWork {
    all = List.copyOf(all);
    asked = List.copyOf(asked);
  }

  /**
   * The work of a stage as the record stands.
   *
   * @param round of the readings; empty where it follows from what was moved
   * @throws InputException if the job has no such stage, the stage asks for nothing, or the round
   *     is none
   */
  public static StageWork of(StoredJob stored, String stageId, OptionalInt round) {
    if (round.orElse(1) < 1) {
      throw new InputException("The round is " + round.getAsInt() + "; expected 1 or more.");
    }
    Stage stage = CaptureIntake.stage(stored, stageId);
    List<Wanted> all = all(stored, stage);
    if (all.isEmpty()) {
      throw new InputException(
          "The stage " + stageId + " of " + stored.key() + " has no targets to measure.");
    }
    List<Wanted> open = Wanted.open(all, stored, stageId, round);
    return new StageWork(
        stage,
        all,
        open.isEmpty() ? new FurtherReadings(stored, stageId).wanted() : open,
        open.size(),
        round);
  }

  /** All that a stage asks for; empty if that is nothing. */
  public static List<Wanted> all(StoredJob stored, Stage stage) {
    return Wanted.of(MeasuringList.of(stored.job().setOut(), stage));
  }

  /** Whether some of it is in the record, and the session goes on behind that. */
  public boolean isGoingOn() {
    return openCount > 0 && openCount < all.size();
  }

  /** How a session of this work is guided; when the list is done it asks for what would decide. */
  public GuideSetting setting(
      Collector collector, StoredJob stored, SiteRecord record, Guide.Order order) {
    return new GuideSetting(
        collector,
        HoldRule.of(stored.job(), stage),
        order,
        all,
        round,
        () ->
            new FurtherReadings(StoredJob.load(record, stored.key().toString()), stage.id())
                .wanted());
  }
}
