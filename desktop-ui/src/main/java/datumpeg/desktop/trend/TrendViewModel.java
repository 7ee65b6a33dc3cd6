package datumpeg.desktop.trend;

import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.JobHistory;
import datumpeg.analysis.trend.TargetTrend;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.source.ReducedJob;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * One check of one target of a job, across stages and rounds.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class TrendViewModel {
  /** One that goes on is a trend; of these the gravest is asked about first, then the longest. */
  private static final Comparator<TargetTrend> MOST_TELLING =
      Comparator.comparing((TargetTrend series) -> series.steps().size() > 1)
          .thenComparing(TrendViewModel::gravest, Comparator.reverseOrder())
          .thenComparing(series -> series.steps().size());

  private static final String KEPT_CHECK = "trend.of-job.check";
  private static final String KEPT_TARGET = "trend.of-job.target";

  private final Words words;
  private final ReadOnlyObjectWrapper<TrendPage> page = new ReadOnlyObjectWrapper<>();
  private Consumer<Map<String, String>> keep = kept -> {};
  private RecordState state = RecordState.unread("");
  private Object shown = "";
  private String job = "";
  private String check = "";
  private String target = "";

  /** The trend of no job. */
  public TrendViewModel(Words words) {
    this.words = words;
    refresh();
  }

  /** Shows what was shown last of the job that was shown last. */
  public void restore(Map<String, String> kept) {
    job = kept.getOrDefault("job", "");
    check = kept.getOrDefault(KEPT_CHECK, "");
    target = kept.getOrDefault(KEPT_TARGET, "");
    refresh();
  }

  /** Is told at each choice what to keep for the next start. */
  public void onChosen(Consumer<Map<String, String>> told) {
    keep = told;
  }

  public void show(RecordState newState) {
    state = newState;
    Object now = List.of(job, newState.job(job), words.figures().lengths().display());
    if (!now.equals(shown)) { // most states bring news of other jobs
      shown = now;
      refresh();
    }
  }

  /** Chooses the job; its most telling check is shown until another is chosen. */
  public void choose(String newJob) {
    if (!newJob.equals(job)) {
      job = newJob;
      check = "";
      target = "";
      refresh();
      keep.accept(Map.of(KEPT_CHECK, "", KEPT_TARGET, ""));
    }
  }

  void chooseCheck(String newCheck) {
    if (!newCheck.equals(page.get().check())) {
      check = newCheck;
      target = "";
      refresh();
      keep.accept(Map.of(KEPT_CHECK, check, KEPT_TARGET, target));
    }
  }

  void chooseTarget(String newTarget) {
    check = page.get().check();
    target = newTarget;
    refresh();
    keep.accept(Map.of(KEPT_CHECK, check, KEPT_TARGET, target));
  }

  ReadOnlyObjectProperty<TrendPage> page() {
    return page.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  private void refresh() {
    page.set(
        job.isEmpty()
            ? TrendPage.empty("", words.text("trend.no-job"))
            : state
                .job(job)
                .map(this::page)
                .orElseGet(() -> TrendPage.empty(job, words.text("findings.unknown-job", job))));
  }

  private TrendPage page(JobState jobState) {
    String name = jobState.row().name().isEmpty() ? job : jobState.row().name();
    if (jobState.work().isEmpty()) {
      String trouble = jobState.trouble();
      return TrendPage.empty(name, trouble.isEmpty() ? words.text("findings.working") : trouble);
    }
    List<TargetTrend> all = allOf(jobState.work().get());
    return all.stream()
        .filter(series -> check.isEmpty() || series.check().equals(check))
        .filter(series -> target.isEmpty() || series.target().equals(target))
        .max(MOST_TELLING)
        .map(series -> page(name, all, series))
        .orElseGet(() -> TrendPage.empty(name, nothing()));
  }

  private static List<TargetTrend> allOf(ReducedJob work) {
    List<Findings> inTime = new ArrayList<>(work.earlier());
    inTime.add(work.findings());
    // When and by which meter is not shown here, so the readings are not needed.
    return TargetTrend.allOf(JobHistory.of(work.job(), inTime, List.of()));
  }

  private static Standing gravest(TargetTrend series) {
    return series.steps().stream()
        .map(step -> Standing.of(step.outcome()))
        .min(Comparator.naturalOrder())
        .orElse(Standing.NO_LIMIT);
  }

  private String nothing() {
    return check.isEmpty()
        ? words.text("trend.nothing")
        : words.text("trend.gone", words.check(check), target);
  }

  private TrendPage page(String name, List<TargetTrend> all, TargetTrend series) {
    boolean severalRounds = series.steps().stream().anyMatch(step -> step.outcome().round() > 1);
    List<TrendPoint> points =
        series.steps().stream()
            .map(step -> TrendPoint.of(label(step, severalRounds), step.outcome(), words.figures()))
            .toList();
    String sentence = sentence(series);
    return new TrendPage(
        name,
        all.stream()
            .map(TargetTrend::check)
            .distinct()
            .map(id -> new TrendPage.Choice(id, words.check(id)))
            .toList(),
        series.check(),
        all.stream()
            .filter(other -> other.check().equals(series.check()))
            .map(TargetTrend::target)
            .toList(),
        series.target(),
        points,
        words.figures().symbol(series.last().unit()),
        sentence,
        new TrendChanges(words)
            .sentences(points.stream().map(TrendPoint::label).toList(), series.changes()),
        sentence + " " + spoken(points));
  }

  private String label(DatedOutcome step, boolean severalRounds) {
    String stage = words.stage(step.stage());
    return severalRounds ? words.text("trend.round", stage, step.outcome().round()) : stage;
  }

  private String sentence(TargetTrend series) {
    Outcome last = series.last();
    Optional<String> source = last.limits().map(limits -> limits.source());
    String limits =
        source.isPresent()
            ? words.text("trend.limits-from", source.get())
            : words.text("trend.no-limits");
    String standing =
        words.text(
            "trend.last",
            words.check(series.check()),
            series.target(),
            words.standing(Standing.of(last)));
    return standing + " " + limits;
  }

  private String spoken(List<TrendPoint> points) {
    return String.join(
        " ",
        points.stream()
            .map(
                point ->
                    words.text(
                        "trend.spoken-point",
                        point.label(),
                        point.written(),
                        words.standing(point.standing())))
            .toList());
  }
}
