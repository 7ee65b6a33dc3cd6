package datumpeg.desktop.measure;

import datumpeg.desktop.measure.MeasurePage.JobChoice;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Measuring: what is chosen before a session, and the session as it goes.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class MeasureViewModel {
  private final Words words;
  private final Sessions sessions;
  private final Sounds sounds;
  private final Consumer<Map<String, String>> keep;
  private final MeterSearch search;
  private final KeyedInput keyed = new KeyedInput();
  private final ReadOnlyObjectWrapper<MeasurePage> page = new ReadOnlyObjectWrapper<>();
  private List<JobChoice> jobs = List.of();
  private String job = "";
  private String stage = "";
  private String sentence = "";
  private Optional<Sessions.Choices> choices = Optional.empty();
  private Remembered remembered = Remembered.nothing();
  private boolean shown;
  private boolean bytesShown;
  private boolean footAwaited;
  private @Nullable SessionWish wish;
  private Sessions.@Nullable Session session;
  private @Nullable SessionShot shot;

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
    this.keep = keep;
    this.words = words;
    this.sessions = sessions;
    this.sounds = sounds;
    this.search = new MeterSearch(words, sessions, this::refresh);
    refresh();
  }

  ReadOnlyObjectProperty<MeasurePage> page() {
    return page.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  Remembered remembered() {
    return remembered;
  }

  /** Takes over what was kept. */
  public void restore(Map<String, String> lastState) {
    remembered = Remembered.of(lastState);
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
    sentence = "";
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

  private void remember(Remembered newer) {
    remembered = newer;
    keep.accept(newer.asTexts());
  }

  boolean isRunning() {
    return session != null;
  }

  void begin(SessionWish newWish) {
    search.stop();
    wish = newWish;
    remember(remembered.with(newWish));
    sentence = "";
    shot = null;
    bytesShown = false;
    footAwaited = false;
    keyed.clear();
    session = sessions.begin(newWish, new Hearing());
    refresh();
  }

  /** Begins again as before, behind what was recorded: after a cable was pulled, for instance. */
  void goOn() {
    SessionWish again = wish;
    if (again != null && !isRunning()) {
      begin(again);
    }
  }

  /** Whether there is a session to go on with. */
  boolean canGoOn() {
    return wish != null && !isRunning();
  }

  void act(Act act) {
    switch (act) {
      case BYTES -> bytesShown = !bytesShown;
      case TONES -> remember(remembered.withTones(!remembered.tones()));
      case FOOT -> footAwaited = !footAwaited;
      default -> type(act.line());
    }
    refresh();
  }

  /** The held value is a reading of this one of the choices. */
  void choice(int index) {
    type(Integer.toString(index + 1));
  }

  private void type(String line) {
    Sessions.Session going = session;
    if (going != null) {
      going.typed(line);
    }
  }

  /** A character came from the keyboard, whatever has the focus; false if it means nothing. */
  boolean typed(String character) {
    boolean before = keyed.isEmpty();
    Optional<Act> act = keyed.typed(character).flatMap(Act::ofKey);
    act.filter(this::isPossible).ifPresent(this::act);
    refresh();
    return act.isPresent() || !before || !keyed.isEmpty();
  }

  private boolean isPossible(Act act) {
    SessionShot now = shot;
    boolean held = now != null && now.guide().question().isPresent();
    return held || (act != Act.ACCEPT && act != Act.AGAIN);
  }

  /** The Enter key: a value is complete. Without one it does nothing, so that none is accepted. */
  void enter() {
    keyed.enter().ifPresent(this::type);
    refresh();
  }

  void rubOut() {
    keyed.rubOut();
    refresh();
  }

  void escape() {
    keyed.clear();
    footAwaited = false;
    refresh();
  }

  /** A key went down; true if it is the foot switch's, or becomes it. */
  boolean pressed(String keyName) {
    if (footAwaited) {
      footAwaited = false;
      remember(remembered.withFootKey(keyName));
      refresh();
      return true;
    }
    if (!keyName.equals(remembered.footKey())) {
      return false;
    }
    if (isPossible(Act.ACCEPT)) {
      act(Act.ACCEPT);
    }
    return true;
  }

  private void refresh() {
    Optional<MeasurePage.Running> running =
        session == null
            ? Optional.empty()
            : Optional.of(
                new RunningPage(
                        words, wish, shot, keyed.text(), remembered, bytesShown, footAwaited)
                    .page());
    page.set(new MeasurePage(jobs, job, choices, stage, search.state(), sentence(), running));
  }

  private String sentence() {
    if (!sentence.isEmpty()) {
      return sentence;
    }
    if (job.isEmpty()) {
      return words.text(jobs.isEmpty() ? "measure.no-jobs" : "measure.no-job");
    }
    return choices.map(Sessions.Choices::trouble).orElse(words.text("measure.looking"));
  }

  /** Hears one session; what an earlier one still says is not listened to. */
  private final class Hearing implements Sessions.Told {
    @Override
    public void stands(SessionShot newShot) {
      SessionShot before = shot;
      shot = newShot;
      sound(before, newShot);
      refresh();
    }

    private void sound(@Nullable SessionShot before, SessionShot now) {
      if (!remembered.tones()) {
        return;
      }
      if (now.takenCount() > (before == null ? 0 : before.takenCount())) {
        sounds.accepted();
      } else if (now.heldCount() > (before == null ? 0 : before.heldCount())) {
        if (now.watched().isEmpty()) {
          sounds.held();
        } else if (RunningPage.isInside(now)) {
          sounds.accepted();
        }
      }
    }

    @Override
    public void ended(String trouble, long recordedCount) {
      session = null;
      shot = null;
      sentence =
          (trouble.isEmpty() ? "" : trouble + " ") + words.count("measure.ended", recordedCount);
      look();
    }
  }
}
