package datumpeg.desktop.form;

import datumpeg.analysis.quantity.LengthDisplay;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.jobfile.JobDraft;
import datumpeg.desktop.background.LatestAnswer;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
  private static final int MOST_STRAYS = 8;
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

  /** What the user types into a field. */
  void type(FormField field, String typed) {
    String written =
        field.choices().isEmpty()
            ? TypedValue.written(field.shape(), typed, words.figures().lengths().display())
            : typed;
    JobDraft draft = asked.state().draft();
    become(
        field.shape() == FormField.Shape.SENTENCE && written.isBlank()
            ? draft.blanked(field.path())
            : draft.with(field.path(), field.shape().kind(), written));
  }

  /** Takes an entry or a table away. */
  void remove(String path) {
    JobDraft draft = asked.state().draft().without(path);
    asked = asked.filledWith(asked.state());
    become(draft);
  }

  /** Adds an opening, named after those there are. */
  void addOpening() {
    become(DraftAdditions.opening(asked.state().draft()));
  }

  /** Adds a meter of the name; one that is there already stays as it is. */
  void addMeter(String name) {
    add(DraftAdditions.meter(asked.state().draft(), name));
  }

  /** Adds a stage of the name; one that is there already stays as it is. */
  void addStage(String name) {
    add(DraftAdditions.stage(asked.state().draft(), name));
  }

  /** Adds a row of the name to a table; one that is there already stays as it is. */
  void addRow(FormTable table, String name) {
    add(DraftAdditions.row(asked.state().draft(), table, name));
  }

  /** Gives a table of corners those of the rectangle of span and length. */
  void beginWithRectangle(FormTable table) {
    become(DraftAdditions.rectangle(asked.state().draft(), table.path()));
  }

  /** Brings a row one place further up. */
  void raise(FormTable table, FormTable.Row row) {
    become(asked.state().draft().raised(table.path(), row.name()));
  }

  private void add(DraftAdditions.Added added) {
    if (added.refused().isEmpty()) {
      become(added.draft());
    } else {
      said.set(words.text(added.refused(), added.name()));
    }
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
    String sentence =
        switch (taken.outcome()) {
          case STORED -> words.text("form.stored", taken.revision(), taken.job());
          case NOTHING_NEW -> words.text("form.nothing-new", taken.revision(), taken.job());
          case OVERTAKEN -> words.text("form.overtaken", taken.job());
        };
    stored.set(taken.outcome() == JobShelf.Outcome.OVERTAKEN ? "" : taken.job());
    said.set(sentence + strays(taken.strays()));
  }

  /** Which readings have no place any more, the first of them by name. */
  private String strays(List<String> strays) {
    if (strays.isEmpty()) {
      return "";
    }
    List<String> lines = new ArrayList<>(List.of(words.count("form.strays", strays.size())));
    lines.addAll(strays.subList(0, Math.min(MOST_STRAYS, strays.size())));
    if (strays.size() > MOST_STRAYS) {
      lines.add(words.text("form.more-strays", strays.size() - MOST_STRAYS));
    }
    return "\n" + String.join("\n", lines);
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
