package datumpeg.analysis.check.frame;

import datumpeg.analysis.check.AgreementTest;
import datumpeg.analysis.check.Check;
import datumpeg.analysis.check.CheckResult;
import datumpeg.analysis.check.Network;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.check.OutcomeMaker;
import datumpeg.analysis.check.StageReadings;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Everything about the frames that stand: clear spans, spacings and plumb, each as observed by
 * itself and then from all readings together ({@link FrameNetwork}).
 */
public final class Frames implements Check {
  private final Job job;
  private final ClearDistances distances;
  private final FrameSpacing spacing;
  private final ColumnPlumb plumb;

  public Frames(Job job, OutcomeMaker outcomes) {
    this.job = job;
    this.distances = new ClearDistances(job, outcomes);
    this.spacing = new FrameSpacing(job, outcomes);
    this.plumb = new ColumnPlumb(job, outcomes);
  }

  /** Leans at column height as the tilts and plumb lines alone give them, by their targets. */
  public Map<String, Double> leansAsObserved(StageReadings stage) {
    Map<String, Double> leans = new TreeMap<>();
    plumb
        .observed(stage)
        .leans()
        .forEach(lean -> leans.put(lean.target(), lean.estimate().value()));
    return leans;
  }

  private FrameNetwork network(StageReadings stage, ColumnPlumb.Observed leans) {
    return FrameNetwork.of(
        job,
        stage,
        spacing.current(stage),
        stage.current(stage.where(ClearDistances::isClearSpan)),
        leans.leans());
  }

  private List<CheckResult> results(
      StageReadings stage, ColumnPlumb.Observed leans, FrameNetwork network) {
    return List.of(
        distances.of(stage, network), spacing.of(stage, network), plumb.of(stage, leans, network));
  }

  @Override
  public List<Outcome> outcomes(StageReadings stage) {
    ColumnPlumb.Observed leans = plumb.observed(stage);
    return results(stage, leans, network(stage, leans)).stream()
        .flatMap(result -> result.outcomes().stream())
        .toList();
  }

  @Override
  public CheckResult of(StageReadings stage) {
    ColumnPlumb.Observed leans = plumb.observed(stage);
    FrameNetwork network = network(stage, leans);
    List<CheckResult> results = results(stage, leans, network);
    List<Outcome> outcomes = new ArrayList<>();
    List<Note> notes = new ArrayList<>();
    List<Reading> used = new ArrayList<>();
    List<AgreementTest> tests = new ArrayList<>();
    List<Network> networks = new ArrayList<>();
    for (CheckResult result : results) {
      outcomes.addAll(result.outcomes());
      notes.addAll(result.notes());
      tests.addAll(result.tests());
      used.addAll(result.used());
      networks.addAll(result.networks());
    }
    network.test(stage).ifPresent(tests::add);
    new NextFrameReading(job, network, stage).note(outcomes).ifPresent(notes::add);
    network.told().ifPresent(networks::add);
    return new CheckResult(outcomes, notes, Map.of(), Map.of(), used, networks).with(tests);
  }
}
