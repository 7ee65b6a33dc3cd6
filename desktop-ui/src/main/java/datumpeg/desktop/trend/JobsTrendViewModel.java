package datumpeg.desktop.trend;

import datumpeg.desktop.background.LatestAnswer;
import datumpeg.desktop.control.LastAsked;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * One check over all jobs, as a control chart. What is asked is worked out on another thread; the
 * page follows.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class JobsTrendViewModel {
  private static final String KEPT = "trend.";

  private final Words words;
  private final LatestAnswer<TrendAsked, JobsTrendPage> answers;
  private final ReadOnlyObjectWrapper<JobsTrendPage> page = new ReadOnlyObjectWrapper<>();
  private Consumer<Map<String, String>> keep = kept -> {};
  private Runnable onWanted = () -> {};
  private boolean wanted;
  private TrendAsked asked =
      new TrendAsked(RecordState.unread(""), Map.of(), Optional.empty(), Optional.empty());

  /** The trend of no record. */
  public JobsTrendViewModel(Words words) {
    this(words, LatestAnswer.worker("trend over jobs"), Platform::runLater);
  }

  JobsTrendViewModel(Words words, Executor worker, Executor receivingThread) {
    this.words = words;
    JobsTrendMaker maker = new JobsTrendMaker(words);
    this.answers = new LatestAnswer<>(worker, receivingThread, maker::page, page::set);
    page.set(maker.page(asked));
  }

  /** Asks again what was asked last. */
  public void restore(Map<String, String> kept) {
    wanted = Boolean.parseBoolean(kept.getOrDefault(KEPT + "over-jobs", ""));
    asked = asked.with(LastAsked.ofKept(KEPT, TrendMatter.class, kept));
  }

  /** Is told at each choice what to keep for the next start. */
  public void onAsked(Consumer<Map<String, String>> told) {
    keep = told;
  }

  /** Is told when the outcomes of all jobs are wanted, and when no longer. */
  public void onWanted(Runnable told) {
    onWanted = told;
  }

  /** Whether the trend over jobs is shown, not that of one. */
  public boolean isWanted() {
    return wanted;
  }

  void want(boolean overJobs) {
    wanted = overJobs;
    keep.accept(Map.of(KEPT + "over-jobs", Boolean.toString(overJobs)));
    onWanted.run();
    if (wanted) {
      ask(asked);
    }
  }

  /** While the trend over jobs is not shown, none is made. */
  public void show(RecordState state) {
    asked = asked.with(state);
    if (wanted) {
      ask(asked);
    }
  }

  void choose(TrendMatter matter, String id) {
    ask(asked.with(matter, id));
    keep.accept(asked.last().kept(KEPT, TrendMatter.class));
  }

  /** Only what was measured on these days (UTC) and between them; open where empty. */
  void between(Optional<LocalDate> from, Optional<LocalDate> to) {
    ask(asked.between(from, to));
    keep.accept(asked.last().kept(KEPT, TrendMatter.class));
  }

  ReadOnlyObjectProperty<JobsTrendPage> page() {
    return page.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  private void ask(TrendAsked newAsked) {
    asked = newAsked;
    answers.ask(newAsked);
  }
}
