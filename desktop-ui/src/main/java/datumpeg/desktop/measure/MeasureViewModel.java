package datumpeg.desktop.measure;

import datumpeg.desktop.measure.MeasurePage.JobChoice;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * Measuring: what is chosen before a session, and the session as it goes.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class MeasureViewModel {
  private final Words words;
  private final Sessions sessions;
  private final Memory memory;
  private final MeterSearch search;
  private final SessionModel session;
  private final ReadOnlyObjectWrapper<MeasurePage> page = new ReadOnlyObjectWrapper<>();
  private List<JobChoice> jobs = List.of();
  private String job = "";
  private String stage = "";
  private Optional<Sessions.Choices> choices = Optional.empty();
  private boolean shown;
  private BiConsumer<String, String> onBegun = (begunJob, begunStage) -> {};

  /**
   * Measuring of no job yet, with tones of this machine.
   *
   * @param keep is given what is to be kept until the window is opened the next time, by names of
   *     its own
   */
  public MeasureViewModel(Words words, Sessions sessions, Consumer<Map<String, String>> keep) {
    this(words, sessions, new Tones(), keep);
  }

  MeasureViewModel(
      Words words, Sessions sessions, Sounds sounds, Consumer<Map<String, String>> keep) {
    this.words = words;
    this.sessions = sessions;
    this.memory = new Memory(keep);
    this.search = new MeterSearch(words, sessions, this::refresh);
    this.session = new SessionModel(words, sessions, sounds, memory, this::refresh);
    session.whenEnded(this::look);
    refresh();
  }

  ReadOnlyObjectProperty<MeasurePage> page() {
    return page.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  Remembered remembered() {
    return memory.now();
  }

  /** The session that runs, and how the last one ended. */
  SessionModel session() {
    return session;
  }

  /** Takes over what was kept. */
  public void restore(Map<String, String> lastState) {
    memory.restore(lastState);
    refresh();
  }

  public void show(RecordState state) {
    jobs =
        state.jobs().stream()
            .map(each -> new JobChoice(each.row().id(), each.row().name()))
            .toList();
    refresh();
  }

  /**
   * Chooses what is measured next; a session that runs goes on.
   *
   * @param newStage empty for the first that is not measured through
   */
  public void choose(String newJob, String newStage) {
    if (isRunning()) {
      return;
    }
    job = newJob;
    stage = newStage;
    session.forgetEnding();
    look();
  }

  void chooseStage(String newStage) {
    stage = newStage;
    refresh();
  }

  /** Whether the screen is shown: meters are looked for only then. */
  void shown(boolean now) {
    shown = now;
    if (now && !isRunning()) {
      look();
    } else if (!now) {
      search.stop();
    }
    refresh();
  }

  boolean isShown() {
    return shown;
  }

  /** Listens for Bluetooth LE meters, or stops listening. */
  void listen() {
    search.toggle();
  }

  /** Looks again what is to be measured, and which meters are there. */
  void look() {
    choices = choices.filter(known -> known.job().equals(job));
    refresh();
    if (shown && !job.isEmpty()) {
      sessions.look(job, this::found);
    }
  }

  private void found(Sessions.Choices found) {
    if (!found.job().equals(job) || isRunning()) {
      return;
    }
    choices = Optional.of(found);
    boolean known = found.stages().stream().anyMatch(each -> each.id().equals(stage));
    if (!known) {
      stage =
          found.stages().stream()
              .filter(each -> each.openCount() > 0)
              .findFirst()
              .or(() -> found.stages().stream().findFirst())
              .map(Sessions.StageChoice::id)
              .orElse("");
    }
    refresh();
  }

  boolean isRunning() {
    return session.isRunning();
  }

  /** Is told the job and the stage of each session that begins. */
  public void onBegun(BiConsumer<String, String> told) {
    onBegun = told;
  }

  void begin(SessionWish wish) {
    search.stop();
    job = wish.job();
    stage = wish.stage();
    session.begin(wish);
    onBegun.accept(wish.job(), wish.stage());
  }

  /** Says what a round can be. */
  void refuseRound(String typed) {
    session.refuse(words.text("measure.round-wrong", typed));
  }

  /** Begins again where the last session stood, behind what was recorded. */
  void goOn() {
    session.left().map(left -> left.wish(memory.now())).ifPresent(this::begin);
  }

  private void refresh() {
    Optional<MeasurePage.Running> running = session.page();
    page.set(
        new MeasurePage(
            jobs,
            job,
            choices,
            stage,
            search.state(),
            whatIsLeft(),
            sentence(),
            running,
            shown ? "" : running.map(this::elsewhere).orElse("")));
  }

  /** A job that the record does not have is none to go on with. */
  private String whatIsLeft() {
    return session
        .left()
        .flatMap(
            left ->
                jobs.stream()
                    .filter(each -> each.id().equals(left.job()))
                    .findFirst()
                    .map(
                        each -> words.text("measure.go-on", name(each), words.stage(left.stage()))))
        .orElse("");
  }

  private static String name(JobChoice job) {
    return job.name().isEmpty() ? job.id() : job.name();
  }

  /** What other screens say of the session, in one line: what is held or typed before all else. */
  private String elsewhere(MeasurePage.Running running) {
    String what =
        Stream.of(
                running.question(),
                running.typed().isEmpty()
                    ? ""
                    : words.text("measure.typed-elsewhere", running.typed()),
                running.trouble(),
                running.said(),
                running.instruction())
            .filter(text -> !text.isEmpty())
            .findFirst()
            .orElse("");
    return words.text("measure.elsewhere", running.title(), what);
  }

  private String sentence() {
    if (!session.ending().isEmpty()) {
      return session.ending();
    }
    if (job.isEmpty()) {
      return words.text(jobs.isEmpty() ? "measure.no-jobs" : "measure.no-job");
    }
    return choices.map(Sessions.Choices::trouble).orElse(words.text("measure.looking"));
  }
}
