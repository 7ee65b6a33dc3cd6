package datumpeg.desktop.compare;

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
 * Groups of jobs compared by one check. What is asked is worked out on another thread; the page
 * follows.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class CompareViewModel {
  private static final String KEPT = "compare.";

  private final Words words;
  private final LatestAnswer<CompareAsked, ComparePage> answers;
  private final ReadOnlyObjectWrapper<ComparePage> page = new ReadOnlyObjectWrapper<>();
  private Consumer<Map<String, String>> keep = kept -> {};
  private CompareAsked asked =
      new CompareAsked(RecordState.unread(""), Map.of(), Optional.empty(), Optional.empty());

  /** The comparison of nothing. */
  public CompareViewModel(Words words) {
    this(words, LatestAnswer.worker("comparison"), Platform::runLater);
  }

  CompareViewModel(Words words, Executor worker, Executor receivingThread) {
    this.words = words;
    CompareMaker maker = new CompareMaker(words);
    page.set(maker.page(asked));
    this.answers = new LatestAnswer<>(worker, receivingThread, maker::page, page::set);
  }

  /** Asks again what was asked last. */
  public void restore(Map<String, String> kept) {
    asked = asked.with(LastAsked.ofKept(KEPT, CompareMatter.class, kept));
  }

  /** Is told at each choice what to keep for the next start. */
  public void onAsked(Consumer<Map<String, String>> told) {
    keep = told;
  }

  public void show(RecordState state) {
    ask(asked.with(state));
  }

  void choose(CompareMatter matter, String id) {
    ask(asked.with(matter, id));
    keep.accept(asked.last().kept(KEPT, CompareMatter.class));
  }

  /** Only what was measured on these days (UTC) and between them; open where empty. */
  void between(Optional<LocalDate> from, Optional<LocalDate> to) {
    ask(asked.between(from, to));
    keep.accept(asked.last().kept(KEPT, CompareMatter.class));
  }

  ReadOnlyObjectProperty<ComparePage> page() {
    return page.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  private void ask(CompareAsked newAsked) {
    asked = newAsked;
    answers.ask(newAsked);
  }
}
