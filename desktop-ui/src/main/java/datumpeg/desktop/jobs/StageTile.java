package datumpeg.desktop.jobs;

import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.bridge.derived.StageCount;
import datumpeg.desktop.text.Standing;
import java.util.ArrayList;
import java.util.List;

/**
 * One stage of a job in the strip.
 *
 * @param stage the stage's id
 * @param title its name on screen
 * @param counts how many outcomes stand how, the gravest first; empty when nothing was measured
 * @param holdPoint how its hold point stands
 */
record StageTile(String stage, String title, List<Count> counts, HoldPoint.State holdPoint) {
  StageTile {
    counts = List.copyOf(counts);
  }

  /** The key of the words for its hold point; empty where there is nothing to say. */
  String holdPointKey() {
    return switch (holdPoint) {
      case OPEN -> "jobs.hold-open";
      case TO_SIGN -> "jobs.hold-to-sign";
      case SIGNED -> "jobs.hold-signed";
      case NONE, NOT_BEGUN -> "";
    };
  }

  /** So many outcomes that stand so. */
  record Count(Standing standing, int number) {}

  static StageTile of(StageCount stage, String title) {
    List<Count> counts = new ArrayList<>();
    for (Standing standing : Standing.values()) {
      int number = number(stage, standing);
      if (stage.measured() && number > 0) {
        counts.add(new Count(standing, number));
      }
    }
    return new StageTile(stage.stage(), title, counts, stage.holdPoint());
  }

  private static int number(StageCount stage, Standing standing) {
    return switch (standing) {
      case CONFORMING -> stage.conforming();
      case UNDECIDED -> stage.undecided();
      case NONCONFORMING -> stage.nonconforming();
      case STALE -> stage.stale();
      case NOT_MEASURED -> stage.notMeasured();
      case NO_LIMIT -> stage.noLimit();
    };
  }
}
