package datumpeg.desktop.trend;

import datumpeg.desktop.background.LatestAnswer;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
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
  private final Words words;
  private final LatestAnswer<TrendAsked, JobsTrendPage> answers;
  private final ReadOnlyObjectWrapper<JobsTrendPage> page = new ReadOnlyObjectWrapper<>();
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

  public void show(RecordState state) {
    ask(asked.with(state));
  }

  void choose(TrendMatter matter, String id) {
    ask(asked.with(matter, id));
  }

  /** Only what was measured on these days (UTC) and between them; open where empty. */
  void between(Optional<LocalDate> from, Optional<LocalDate> to) {
    ask(asked.between(from, to));
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
