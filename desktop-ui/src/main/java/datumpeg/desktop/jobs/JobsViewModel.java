package datumpeg.desktop.jobs;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.StageCount;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * The jobs of the record, and which one is opened.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class JobsViewModel {
  private final Words words;
  private final ZoneId zone;
  private final BiConsumer<String, String> open;
  private final ReadOnlyObjectWrapper<JobsPage> page;
  private RecordState state = RecordState.unread("");
  private Consumer<Map<String, String>> keep = kept -> {};
  private JobFilter filter = JobFilter.ALL;

  /**
   * An empty list.
   *
   * @param zone in which times are written
   * @param open is told the job, and the stage or an empty text, that the user wants to see
   */
  public JobsViewModel(Words words, ZoneId zone, BiConsumer<String, String> open) {
    this.words = words;
    this.zone = zone;
    this.open = open;
    this.page =
        new ReadOnlyObjectWrapper<>(
            new JobsPage(
                words.text("jobs.heading"),
                words.text("jobs.reading"),
                List.of(),
                List.of(),
                List.of(),
                List.of()));
  }

  public void show(RecordState newState) {
    state = newState;
    refresh();
  }

  /** Goes on with the filter that was set last. */
  public void restore(Map<String, String> kept) {
    filter = JobFilter.ofKept(kept);
    refresh();
  }

  /** Is given the filter, by names, whenever it changes. */
  public void onFilter(Consumer<Map<String, String>> newKeep) {
    keep = newKeep;
  }

  JobFilter filter() {
    return filter;
  }

  /** Shows only jobs that fit. */
  void filter(JobFilter newFilter) {
    if (!newFilter.equals(filter)) {
      filter = newFilter;
      keep.accept(filter.kept());
      refresh();
    }
  }

  private void refresh() {
    List<JobCard> cards =
        state.jobs().stream().filter(job -> filter.fits(job, zone)).map(this::card).toList();
    int all = state.jobs().size();
    String heading =
        cards.size() == all ? heading(all) : words.text("jobs.filtered", cards.size(), all);
    page.set(
        new JobsPage(
            heading,
            all > 0 && cards.isEmpty() ? none() : sentence(state),
            cards,
            names(JobOverview::crew),
            names(JobOverview::site),
            names(JobOverview::slabBy)));
  }

  private List<String> names(Function<JobOverview, String> of) {
    return state.jobs().stream()
        .flatMap(job -> job.overview().stream())
        .map(of)
        .filter(name -> !name.isEmpty())
        .distinct()
        .sorted()
        .toList();
  }

  /** Why no job is left, by everything that was asked for. */
  private String none() {
    List<String> asked = new ArrayList<>();
    add(asked, "jobs.asked-text", filter.text().strip());
    add(asked, "jobs.asked-crew", filter.crew());
    add(asked, "jobs.asked-site", filter.site());
    add(asked, "jobs.asked-slab", filter.slabBy());
    add(asked, "jobs.asked-from", filter.from().map(LocalDate::toString).orElse(""));
    add(asked, "jobs.asked-to", filter.to().map(LocalDate::toString).orElse(""));
    return words.text("jobs.none-fits", String.join(", ", asked));
  }

  private void add(List<String> asked, String key, String value) {
    if (!value.isEmpty()) {
      asked.add(words.text(key, value));
    }
  }

  ReadOnlyObjectProperty<JobsPage> page() {
    return page.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  void open(JobCard card) {
    open.accept(card.id(), "");
  }

  void open(JobCard card, StageTile stage) {
    open.accept(card.id(), stage.stage());
  }

  private String heading(int jobs) {
    return jobs == 0 ? words.text("jobs.heading") : words.count("jobs.heading", jobs);
  }

  private String sentence(RecordState state) {
    if (!state.jobs().isEmpty()) {
      return "";
    }
    if (state.reached()) {
      return words.text("jobs.none", state.file());
    }
    return state.trouble().isEmpty()
        ? words.text("jobs.reading")
        : words.text("jobs.unreachable", state.trouble());
  }

  private JobCard card(JobState state) {
    String id = state.row().id();
    String name = state.row().name();
    return new JobCard(
        id,
        name.isEmpty() ? id : name,
        particulars(state),
        sentence(state),
        state.overview().map(this::stages).orElse(List.of()));
  }

  private String sentence(JobState state) {
    if (!state.trouble().isEmpty()) {
      return state.trouble();
    }
    return state.overview().isPresent() ? "" : words.text("jobs.working");
  }

  private String particulars(JobState state) {
    List<String> parts = new ArrayList<>();
    parts.add(state.row().id());
    state.overview().ifPresent(overview -> whose(overview, parts));
    parts.add(words.count("jobs.readings", state.row().readingCount()));
    state
        .row()
        .lastReadAt()
        .ifPresent(at -> parts.add(words.text("jobs.last", Figures.minute(at, zone))));
    return String.join("  ·  ", parts);
  }

  private void whose(JobOverview identity, List<String> parts) {
    if (!identity.site().isEmpty()) {
      parts.add(words.text("jobs.site", identity.site()));
    }
    if (!identity.crew().isEmpty()) {
      parts.add(words.text("jobs.crew", identity.crew()));
    }
  }

  private List<StageTile> stages(JobOverview overview) {
    List<StageTile> tiles = new ArrayList<>();
    for (StageCount stage : overview.stages()) {
      tiles.add(StageTile.of(stage, words.stage(stage.stage())));
    }
    return tiles;
  }
}
