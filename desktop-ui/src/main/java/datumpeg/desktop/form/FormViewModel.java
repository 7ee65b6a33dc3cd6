package datumpeg.desktop.form;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.background.LatestAnswer;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * A job that is being filled in: a new one, one from a file, or the next revision of one that the
 * record has. What is typed is kept at every change. The page follows, worked out on another
 * thread.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class FormViewModel {
  private static final String NOW = "form.now.";
  private static final String ASIDE = "form.aside.";

  /** Does something off this thread. */
  @FunctionalInterface
  public interface Background {
    /**
     * @param name what is being done, in words
     * @param failed is given what the work threw
     */
    void run(String name, Runnable work, Runnable done, Consumer<Exception> failed);
  }

  private final Words words;
  private final JobShelf shelf;
  private final Background background;
  private final Consumer<Map<String, String>> keep;
  private final Consumer<String> openJob;
  private final LatestAnswer<FormAsked, FormPage> answers;
  private final FormEdits edits;
  private final ReadOnlyObjectWrapper<FormPage> page = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper stored = new ReadOnlyStringWrapper("");
  private LengthDisplay shownUnits = LengthDisplay.METRIC;
  private Runnable onBegin = () -> {};
  private FormAsked asked = new FormAsked(FormState.EMPTY, FormState.EMPTY, Set.of(), 0);

  /**
   * An empty form.
   *
   * @param keep is given what is filled in so far, by names, at every change
   * @param openJob is told the stored job that the user wants to see
   */
  public FormViewModel(
      Words words,
      JobShelf shelf,
      Background background,
      Consumer<Map<String, String>> keep,
      Consumer<String> openJob) {
    this(words, shelf, background, keep, openJob, LatestAnswer.worker("form"), Platform::runLater);
  }

  FormViewModel(
      Words words,
      JobShelf shelf,
      Background background,
      Consumer<Map<String, String>> keep,
      Consumer<String> openJob,
      Executor worker,
      Executor receivingThread) {
    this.words = words;
    this.shelf = shelf;
    this.background = background;
    this.keep = keep;
    this.openJob = openJob;
    this.edits =
        new FormEdits(words, () -> asked.state().draft(), this::become, this::refill, said::set);
    FormMaker maker = new FormMaker(words);
    this.answers = new LatestAnswer<>(worker, receivingThread, maker::page, page::set);
  }

  /** Goes on where a form was left. */
  public void restore(Map<String, String> kept) {
    asked =
        new FormAsked(
            FormState.ofKept(kept, NOW).orElse(FormState.EMPTY),
            FormState.ofKept(kept, ASIDE).orElse(FormState.EMPTY),
            asked.jobs(),
            asked.filled() + 1);
  }

  /** Is told when a form is begun by another screen. */
  public void onBegin(Runnable told) {
    onBegin = told;
  }

  public void show(RecordState state) {
    LengthDisplay units = words.figures().lengths().display();
    if (units != shownUnits) {
      shownUnits = units; // what was typed without a unit keeps the one it was typed in
      asked = asked.filledWith(asked.state());
    }
    ask(asked.with(state.jobs().stream().map(job -> job.row().id()).collect(Collectors.toSet())));
  }

  /** Begins a new job; what stands in the form is put aside. */
  public void begin() {
    fill(FormState.EMPTY);
    onBegin.run();
  }

  /** Begins the next revision of a job; what stands in the form is put aside. */
  public void change(String job) {
    after(
        words.text("form.opening-job"),
        () ->
            shelf
                .newest(job)
                .map(text -> new FormState(job, text, "", JobDraft.of(text)))
                .orElse(FormState.EMPTY),
        this::begun);
  }

  /** Begins a job from a job file; what stands in the form is put aside. */
  public void takeFile(Path file) {
    after(
        words.text("form.reading-file"),
        () -> {
          String text = shelf.read(file);
          JobDraft draft = JobDraft.of(text);
          return against(new FormState("", "", text, draft));
        },
        this::begun);
  }

  private void begun(FormState state) {
    fill(state);
    onBegin.run();
  }

  /** The same entries, as a revision if the record has a job of that name. */
  private FormState against(FormState state) {
    String organisation = state.draft().text("job.organisation");
    String id = state.draft().text("job.id");
    boolean local = organisation.isEmpty() || organisation.equals("local");
    String job = local ? id : organisation + "/" + id;
    return shelf.newest(job).map(base -> state.against(job, base)).orElse(state);
  }

  /** The form that was put aside and the one that is shown change places. */
  void swap() {
    fill(asked.aside());
  }

  /** Into the record, as the command {@code job add} does. */
  void store() {
    FormState state = asked.state();
    after(
        words.text("form.storing"),
        () -> {
          JobShelf.Taken taken = shelf.take(state.text(), state.base());
          FormState next =
              taken.outcome() == JobShelf.Outcome.OVERTAKEN
                  ? against(state)
                  : new FormState(taken.job(), state.text(), "", state.draft());
          return new Stored(taken, next);
        },
        this::stored);
  }

  private record Stored(JobShelf.Taken taken, FormState next) {}

  private void stored(Stored now) {
    JobShelf.Taken taken = now.taken();
    asked = asked.filledWith(now.next());
    keepAndAsk();
    stored.set(taken.outcome() == JobShelf.Outcome.OVERTAKEN ? "" : taken.job());
    said.set(new StoredWords(words).of(taken));
  }

  /** Shows the job that was stored last. */
  void openStored() {
    openJob.accept(stored.get());
  }

  /** Holds nothing before the first page is made. */
  ReadOnlyObjectProperty<FormPage> page() {
    return page.getReadOnlyProperty();
  }

  /** What came of the last thing that was done. */
  ReadOnlyStringProperty said() {
    return said.getReadOnlyProperty();
  }

  /** The job that was stored last; empty for none since the form was begun. */
  ReadOnlyStringProperty storedJob() {
    return stored.getReadOnlyProperty();
  }

  /** What the user does to the entries. */
  FormEdits edits() {
    return edits;
  }

  Words words() {
    return words;
  }

  private void fill(FormState next) {
    FormState before = asked.state();
    asked =
        before.isWorthKeeping() || next.equals(asked.aside())
            ? asked.aside(before).filledWith(next)
            : asked.filledWith(next);
    said.set("");
    stored.set("");
    keepAndAsk();
  }

  /** Its fields show their entries anew, also the one that has the keys. */
  private void refill() {
    asked = asked.filledWith(asked.state());
  }

  private void become(JobDraft draft) {
    said.set("");
    asked = asked.with(asked.state().with(draft));
    keepAndAsk();
  }

  private void keepAndAsk() {
    Map<String, String> kept = new TreeMap<>(asked.state().kept(NOW));
    kept.putAll(asked.aside().kept(ASIDE));
    keep.accept(kept);
    ask(asked);
  }

  private void ask(FormAsked newAsked) {
    asked = newAsked;
    answers.ask(newAsked);
  }

  private <T> void after(String name, Supplier<T> work, Consumer<T> done) {
    AtomicReference<T> result = new AtomicReference<>();
    background.run(
        name, () -> result.set(work.get()), () -> done.accept(result.get()), this::failed);
  }

  private void failed(Exception failure) {
    onBegin.run();
    said.set(
        failure instanceof FailureException
            ? String.valueOf(failure.getMessage())
            : words.text("form.failed", failure.getClass().getSimpleName()));
  }
}
