package datumpeg.desktop.jobs;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.StageCount;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
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
  private String filter = "";

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
            new JobsPage(words.text("jobs.heading"), words.text("jobs.reading"), List.of()));
  }

  public void show(RecordState newState) {
    state = newState;
    refresh();
  }

  /**
   * Shows only jobs in whose name, id, site, crew, slab layer, day of beginning or day of the last
   * entry every one of the words stands.
   */
  void filter(String newFilter) {
    filter = newFilter;
    refresh();
  }

  private void refresh() {
    List<JobCard> cards = state.jobs().stream().filter(this::isWanted).map(this::card).toList();
    int all = state.jobs().size();
    String heading =
        cards.size() == all ? heading(all) : words.text("jobs.filtered", cards.size(), all);
    String none = all > 0 && cards.isEmpty() ? words.text("jobs.none-fits", filter) : "";
    page.set(new JobsPage(heading, none.isEmpty() ? sentence(state) : none, cards));
  }

  private boolean isWanted(JobState job) {
    List<String> told = new ArrayList<>(List.of(job.row().id(), job.row().name()));
    job.row().lastReadAt().ifPresent(at -> told.add(Figures.minute(at, zone)));
    job.overview()
        .ifPresent(
            overview -> {
              told.addAll(List.of(overview.site(), overview.crew(), overview.slabBy()));
              overview.started().ifPresent(day -> told.add(day.toString()));
            });
    String all = String.join("\n", told).toLowerCase(Locale.ROOT);
    return List.of(filter.strip().toLowerCase(Locale.ROOT).split("\\s+", -1)).stream()
        .allMatch(all::contains);
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
