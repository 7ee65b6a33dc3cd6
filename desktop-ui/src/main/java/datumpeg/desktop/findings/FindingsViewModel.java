package datumpeg.desktop.findings;

import datumpeg.analysis.check.AdjustedReading;
import datumpeg.analysis.check.Note;
import datumpeg.analysis.conform.Outcome;
import datumpeg.analysis.measuring.Stage;
import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.analysis.reduce.Cause;
import datumpeg.analysis.reduce.StageFindings;
import datumpeg.desktop.findings.FindingsPage.Behind;
import datumpeg.desktop.findings.FindingsPage.BehindRow;
import datumpeg.desktop.findings.FindingsPage.CauseCard;
import datumpeg.desktop.findings.FindingsPage.ShownStage;
import datumpeg.desktop.findings.FindingsPage.StageChoice;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.source.ReducedJob;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * The findings of one job, one stage at a time.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class FindingsViewModel {
  private final Words words;
  private final StoredRows rows;
  private final BiConsumer<String, String> measure;
  private final ReadOnlyObjectWrapper<FindingsPage> page = new ReadOnlyObjectWrapper<>();
  private RecordState state = RecordState.unread("");
  private Object shown = "";
  private String job = "";
  private String stage = "";
  private Optional<Behind> behind = Optional.empty();
  private String trouble = "";

  /**
   * The findings of no job.
   *
   * @param rows the record behind them
   * @param measure leads to measuring a job's stage
   */
  public FindingsViewModel(Words words, StoredRows rows, BiConsumer<String, String> measure) {
    this.words = words;
    this.rows = rows;
    this.measure = measure;
    refresh();
  }

  public void show(RecordState newState) {
    state = newState;
    Object now = List.of(job, newState.job(job), words.figures().lengths().display());
    if (!now.equals(shown)) { // most states bring news of other jobs
      shown = now;
      refresh();
    }
  }

  /**
   * Chooses the job.
   *
   * @param newStage its stage; empty for the latest one that was measured
   */
  public void choose(String newJob, String newStage) {
    job = newJob;
    stage = newStage;
    behind = Optional.empty();
    trouble = "";
    refresh();
  }

  void chooseStage(String newStage) {
    stage = newStage;
    behind = Optional.empty();
    refresh();
  }

  /** Opens the readings behind an outcome. */
  void open(OutcomeRow row) {
    String title = words.text("behind.title", row.check(), row.target(), row.deviation());
    behind = Optional.of(new Behind(title, words.text("behind.reading"), List.of()));
    refresh();
    rows.readings(job, row.readingIds(), found -> show(title, found));
  }

  private void show(String title, StoredRows.Behind found) {
    if (behind.filter(now -> now.title().equals(title)).isEmpty()) {
      return; // closed, or another was opened since
    }
    String sentence =
        found.trouble().isEmpty() && found.rows().isEmpty()
            ? words.text("behind.none")
            : found.trouble();
    behind =
        Optional.of(
            new Behind(title, sentence, found.rows().stream().map(this::behindRow).toList()));
    refresh();
  }

  private BehindRow behindRow(StoredRows.Row row) {
    Optional<StageFindings> shown =
        state.job(job).flatMap(JobState::work).flatMap(work -> work.findings().stage(shownStage()));
    String adjusted =
        shown.stream()
            .flatMap(found -> found.networks().stream())
            .flatMap(network -> network.readings().stream())
            .filter(reading -> reading.readingId().equals(row.id()))
            .findFirst()
            .map(this::adjusted)
            .orElse("");
    boolean suspected =
        shown.stream()
            .flatMap(found -> found.notes().stream())
            .filter(note -> note.kind() == Note.Kind.SLIP_SUSPECTED)
            .anyMatch(note -> note.readingIds().contains(row.id()));
    return new BehindRow(row, adjusted, suspected);
  }

  private String adjusted(AdjustedReading reading) {
    return words.text(
        "behind.adjusted",
        words.figures().size(reading.adjustedMetres()),
        words.figures().deviation(reading.residualMetres()),
        LengthDisplay.decimal(100 * reading.redundancy(), 0));
  }

  private String shownStage() {
    return page.get().shown().map(ShownStage::stage).orElse(stage);
  }

  void closeBehind() {
    behind = Optional.empty();
    refresh();
  }

  /** A remedy was done: what was moved begins its next round, and is measured again. */
  void done(String thing, String why) {
    String movedJob = job;
    String movedStage = shownStage();
    rows.moved(
        movedJob,
        thing,
        why,
        told -> {
          trouble = told;
          refresh();
          if (told.isEmpty()) {
            measure.accept(movedJob, movedStage);
          }
        });
  }

  ReadOnlyObjectProperty<FindingsPage> page() {
    return page.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  private void refresh() {
    page.set(
        job.isEmpty()
            ? empty("", words.text("findings.no-job"))
            : state
                .job(job)
                .map(this::page)
                .orElseGet(() -> empty(job, words.text("findings.unknown-job", job))));
  }

  private static FindingsPage empty(String title, String sentence) {
    return new FindingsPage(title, sentence, List.of(), Optional.empty(), Optional.empty(), "");
  }

  private FindingsPage page(JobState jobState) {
    String name = jobState.row().name().isEmpty() ? job : jobState.row().name();
    if (jobState.work().isEmpty()) {
      String trouble = jobState.trouble();
      return empty(name, trouble.isEmpty() ? words.text("findings.working") : trouble);
    }
    return page(name, jobState.work().get());
  }

  private FindingsPage page(String name, ReducedJob work) {
    List<StageFindings> measured = work.findings().stages();
    String chosen =
        stage.isEmpty() && !measured.isEmpty() ? measured.get(measured.size() - 1).stage() : stage;
    Optional<StageFindings> shown = work.findings().stage(chosen);
    return new FindingsPage(
        name,
        shown.isPresent() ? "" : nothing(chosen),
        work.job().stages().stream().map(each -> choice(each, work, chosen)).toList(),
        shown.map(findings -> shown(work, findings)),
        behind,
        trouble);
  }

  private String nothing(String chosen) {
    return chosen.isEmpty()
        ? words.text("findings.no-readings")
        : words.text("findings.stage-not-measured", words.stage(chosen));
  }

  private StageChoice choice(Stage each, ReducedJob work, String chosen) {
    Optional<StageFindings> findings = work.findings().stage(each.id());
    Standing gravest =
        findings
            .flatMap(found -> found.outcomes().stream().map(Standing::of).sorted().findFirst())
            .orElse(Standing.NOT_MEASURED);
    return new StageChoice(
        each.id(), words.stage(each.id()), gravest, findings.isPresent(), each.id().equals(chosen));
  }

  private ShownStage shown(ReducedJob work, StageFindings findings) {
    StageAnswer answer = StageAnswer.of(findings, work.holdPoints(), words);
    return new ShownStage(
        findings.stage(),
        answer.standing(),
        answer.sentence(),
        answer.first(),
        IntStream.range(0, findings.causes().size())
            .mapToObj(index -> cause(index + 1, findings.causes().get(index)))
            .toList(),
        findings.causes().isEmpty() ? words.text("findings.no-cause") : "",
        notes(work.strays(), findings.notes()),
        new StageToDraw(work.job().setOut(), findings, words.figures().lengths()),
        findings.outcomes().stream()
            .sorted(Comparator.comparing((Outcome outcome) -> Standing.of(outcome)))
            .map(outcome -> OutcomeRow.of(outcome, words))
            .toList());
  }

  /** Suspected slips first; readings left out are said at every stage. */
  private List<String> notes(List<String> strays, List<Note> notes) {
    List<String> texts = new ArrayList<>();
    notes.stream()
        .sorted(Comparator.comparing(Note::kind))
        .map(Note::text)
        .map(words::told)
        .forEach(texts::add);
    if (!strays.isEmpty()) {
      texts.add(words.count("findings.strays", strays.size(), strays.get(0)));
    }
    return texts;
  }

  private CauseCard cause(int number, Cause cause) {
    String symptoms =
        cause.symptoms().isEmpty()
            ? ""
            : words.text("findings.symptoms", symptoms(cause.symptoms()));
    return new CauseCard(
        number,
        Standing.of(cause.kind()),
        words.told(cause.sentence()),
        words.told(cause.action()),
        symptoms,
        CauseThings.of(cause));
  }

  /** A symptom is a check and a target joined by a space; the check is told by its name. */
  private String symptoms(List<String> symptoms) {
    return String.join(
        ", ",
        symptoms.stream()
            .map(
                symptom -> {
                  int space = symptom.indexOf(' ');
                  return space < 0
                      ? words.check(symptom)
                      : words.check(symptom.substring(0, space)) + symptom.substring(space);
                })
            .toList());
  }
}
