package datumpeg.bridge.jobs;

import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.conform.Verdict;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.job.JobIdentity;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.derived.StageCount;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** What is kept of a job that was worked out. */
public final class Overviews {
  private Overviews() {}

  /**
   * How the stages of a job stand.
   *
   * @param holdPoints as far as they are known; a stage that is not among them has none
   */
  public static JobOverview of(Job job, Findings findings, List<HoldPoint> holdPoints) {
    JobIdentity identity = job.identity();
    return new JobOverview(
        identity.site(),
        identity.crew(),
        identity.slabBy(),
        identity.started(),
        job.stages().stream()
            .map(stage -> count(stage, findings.stage(stage.id()), state(stage, holdPoints)))
            .toList(),
        "");
  }

  private static HoldPoint.State state(Stage stage, List<HoldPoint> holdPoints) {
    return holdPoints.stream()
        .filter(point -> point.stage().id().equals(stage.id()))
        .map(HoldPoint::state)
        .findFirst()
        .orElse(HoldPoint.State.NONE);
  }

  private static StageCount count(
      Stage stage, Optional<StageFindings> findings, HoldPoint.State holdPoint) {
    List<Outcome> outcomes = findings.map(StageFindings::outcomes).orElse(List.of());
    List<Note> notes = findings.map(StageFindings::notes).orElse(List.of());
    return new StageCount(
        stage.id(),
        findings.isPresent(),
        holdPoint,
        number(outcomes, Verdict.CONFORMING),
        number(outcomes, Verdict.UNDECIDED),
        number(outcomes, Verdict.NONCONFORMING),
        number(outcomes, Outcome::stale),
        number(outcomes, outcome -> !outcome.stale() && outcome.verdict().isEmpty()),
        (int) notes.stream().filter(note -> note.kind() == Note.Kind.NOT_MEASURED).count());
  }

  private static int number(List<Outcome> outcomes, Verdict verdict) {
    return number(outcomes, outcome -> !outcome.stale() && outcome.is(verdict));
  }

  private static int number(List<Outcome> outcomes, Predicate<Outcome> counts) {
    return (int) outcomes.stream().filter(counts).count();
  }

  /** The outcomes of every stage and round; of a round found more than once what was found last. */
  static List<KeptOutcome> outcomes(JobWork work) {
    return work.history().stream()
        .map(one -> new KeptOutcome(one.stage(), one.outcome(), one.at(), one.meters()))
        .toList();
  }
}
