package datumpeg.desktop.app;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.desktop.background.LongWork;
import datumpeg.desktop.compare.CompareView;
import datumpeg.desktop.compare.CompareViewModel;
import datumpeg.desktop.findings.FindingsView;
import datumpeg.desktop.findings.FindingsViewModel;
import datumpeg.desktop.findings.StoredRows;
import datumpeg.desktop.form.FormView;
import datumpeg.desktop.form.FormViewModel;
import datumpeg.desktop.form.JobShelf;
import datumpeg.desktop.jobs.JobActions;
import datumpeg.desktop.jobs.JobsView;
import datumpeg.desktop.jobs.JobsViewModel;
import datumpeg.desktop.measure.KeysElsewhere;
import datumpeg.desktop.measure.MeasureView;
import datumpeg.desktop.measure.MeasureViewModel;
import datumpeg.desktop.measure.MeasuringBar;
import datumpeg.desktop.measure.Sessions;
import datumpeg.desktop.setting.Settings;
import datumpeg.desktop.setting.SettingsFile;
import datumpeg.desktop.setting.SettingsView;
import datumpeg.desktop.setting.SettingsViewModel;
import datumpeg.desktop.signoff.Desk;
import datumpeg.desktop.signoff.SignOffView;
import datumpeg.desktop.signoff.SignOffViewModel;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.text.Words;
import datumpeg.desktop.trend.JobsTrendViewModel;
import datumpeg.desktop.trend.TrendView;
import datumpeg.desktop.trend.TrendViewModel;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.stage.Stage;

/**
 * Puts the window together: screens, their view models, and which of them follows which. A screen
 * is one line in {@link #parts}.
 *
 * <p>The JavaFX thread only.
 */
final class DesktopWindow {
  private static final double WIDTH = 1280;
  private static final double HEIGHT = 800;

  private final Words words;
  private final SettingsViewModel settings;
  private final Later<MeasureViewModel> measure;
  private final WindowViewModel window;
  private final List<ScreenPart> parts;
  private final Consumer<String> chosen;
  private final WindowView view;
  private Consumer<Boolean> allJobsWanted = wanted -> {};
  private final LongWork work;
  private RecordState state = RecordState.unread("");
  private String job = "";

  /**
   * The window before its first state.
   *
   * @param found the settings, among them what was shown last
   * @param sessions where measuring is begun
   * @param rows the record behind what is shown
   * @param desk where stages are signed off
   * @param shelf where job files are kept
   * @param keep is given the settings whenever they change
   * @param chosen is told each job that is opened
   */
  DesktopWindow(
      Words words,
      ZoneId zone,
      SettingsFile.Loaded found,
      Sessions sessions,
      StoredRows rows,
      Desk desk,
      JobShelf shelf,
      Consumer<Settings> keep,
      Consumer<String> chosen) {
    this.words = words;
    this.chosen = chosen;
    this.settings = new SettingsViewModel(words, found.settings(), found.trouble());
    this.window = new WindowViewModel(words, zone, settings.trouble(), this::textStep);
    this.measure = new Later<>(() -> measuring(sessions));
    this.parts = parts(zone, rows, desk, shelf);
    restore(found.settings());
    this.view = new WindowView(window, parts, this::cancelWork);
    this.work = new LongWork(Platform::runLater, view::show);
    measure.onMade(this::followMeasuring);
    window.screen().addListener((property, before, screen) -> screenChosen(screen));
    settings.settings().addListener((property, before, now) -> set(before, now, keep));
  }

  private List<ScreenPart> parts(ZoneId zone, StoredRows rows, Desk desk, JobShelf shelf) {
    Later<JobsViewModel> jobs = new Later<>(() -> listing(zone));
    Later<FindingsViewModel> findings =
        new Later<>(() -> new FindingsViewModel(words, rows, this::measure));
    Later<TrendViewModel> trend = new Later<>(this::trend);
    Later<JobsTrendViewModel> jobsTrend = new Later<>(this::trendOverJobs);
    Later<CompareViewModel> compare = new Later<>(this::comparison);
    Later<SignOffViewModel> signOff =
        new Later<>(() -> new SignOffViewModel(words, desk, this::inBackground));
    Later<FormViewModel> form = new Later<>(() -> form(shelf));
    JobActions actions =
        new JobActions(
            () -> form.get().begin(),
            job -> form.get().change(job),
            file -> form.get().takeFile(file),
            shelf::newest);
    return List.of(
        ScreenPart.of(Screen.JOBS, () -> new JobsView(jobs.get(), actions))
            .following(now -> jobs.get().show(now)),
        ScreenPart.of(Screen.FINDINGS, () -> new FindingsView(findings.get()))
            .following(now -> findings.get().show(now))
            .ofJob((newJob, stage) -> findings.get().choose(newJob, stage)),
        ScreenPart.of(Screen.TREND, () -> new TrendView(trend.get(), jobsTrend.get()))
            .following(now -> trend.get().show(now))
            .following(now -> jobsTrend.get().show(now))
            .ofJob((newJob, stage) -> trend.get().choose(newJob))
            .ofAllJobs(() -> jobsTrend.get().isWanted()),
        ScreenPart.of(Screen.MEASURE, () -> new MeasureView(measure.get()))
            .following(now -> measure.get().show(now))
            .ofJob((newJob, stage) -> measure.get().choose(newJob, stage)),
        ScreenPart.of(Screen.COMPARE, () -> new CompareView(compare.get()))
            .following(now -> compare.get().show(now))
            .ofAllJobs(() -> true),
        ScreenPart.of(Screen.FORM, () -> new FormView(form.get()))
            .following(now -> form.get().show(now)),
        ScreenPart.of(Screen.SIGN_OFF, () -> new SignOffView(signOff.get()))
            .following(now -> signOff.get().show(now))
            .ofJob((newJob, stage) -> signOff.get().choose(newJob, stage)),
        ScreenPart.of(Screen.SETTINGS, () -> new SettingsView(settings)));
  }

  private JobsViewModel listing(ZoneId zone) {
    JobsViewModel made = new JobsViewModel(words, zone, this::open);
    made.restore(settings.now().lastState());
    made.onFilter(this::remember);
    return made;
  }

  private TrendViewModel trend() {
    TrendViewModel made = new TrendViewModel(words);
    made.restore(settings.now().lastState());
    made.onChosen(this::remember);
    return made;
  }

  private JobsTrendViewModel trendOverJobs() {
    JobsTrendViewModel made = new JobsTrendViewModel(words);
    made.restore(settings.now().lastState());
    made.onAsked(this::remember);
    made.onWanted(() -> allJobsWanted.accept(shownPart().isOfAllJobs()));
    return made;
  }

  private CompareViewModel comparison() {
    CompareViewModel made = new CompareViewModel(words);
    made.restore(settings.now().lastState());
    made.onAsked(this::remember);
    return made;
  }

  private FormViewModel form(JobShelf shelf) {
    FormViewModel made =
        new FormViewModel(
            words, shelf, this::inBackground, this::remember, stored -> open(stored, ""));
    made.restore(settings.now().lastState());
    made.onBegin(() -> window.screen().set(Screen.FORM));
    return made;
  }

  private MeasureViewModel measuring(Sessions sessions) {
    MeasureViewModel made = new MeasureViewModel(words, sessions, this::remember);
    made.restore(settings.now().lastState());
    made.onBegun(this::choose);
    return made;
  }

  /** A session, which only the screen Measure begins, goes on while other screens are shown. */
  private void followMeasuring(MeasureViewModel made) {
    KeysElsewhere.of(made, view);
    view.below(new MeasuringBar(made, () -> window.screen().set(Screen.MEASURE)));
  }

  /** Shows again what was shown last. */
  private void restore(Settings last) {
    if (!last.last("job").isEmpty()) {
      choose(last.last("job"), last.last("stage"));
    }
    Screen.ofId(last.last("screen")).ifPresent(screen -> window.screen().set(screen));
  }

  /** Brings the screen that is shown to a new state of the record. */
  void show(RecordState newState) {
    state = newState;
    chooseIfNeeded();
    window.show(state);
    shownPart().show(state);
  }

  /** A screen of one job shows the newest one until another is chosen; the list needs none. */
  private void chooseIfNeeded() {
    if (job.isEmpty() && !state.jobs().isEmpty() && shownPart().isOfJob()) {
      choose(state.jobs().get(0).row().id(), "");
    }
  }

  /** Is told, now and at each change, whether the screen shown needs the outcomes of all jobs. */
  void onAllJobsWanted(Consumer<Boolean> told) {
    allJobsWanted = told;
    told.accept(shownPart().isOfAllJobs());
  }

  /** Shows the window. */
  void openOn(Stage stage) {
    Settings now = settings.now();
    Scene scene =
        new Scene(
            view, now.width() > 0 ? now.width() : WIDTH, now.height() > 0 ? now.height() : HEIGHT);
    dress(scene, now);
    settings.settings().addListener((property, before, changed) -> dress(scene, changed));
    stage.setOnHiding(
        event -> settings.become(settings.now().withSize(scene.getWidth(), scene.getHeight())));
    stage.setTitle(words.text("window.title"));
    stage.setScene(scene);
    stage.setMaximized(isLargerThanTheScreen(scene));
    stage.show();
  }

  /** On a small tablet a bar of the system takes room: the lowest buttons would lie below it. */
  private static boolean isLargerThanTheScreen(Scene scene) {
    Rectangle2D room = javafx.stage.Screen.getPrimary().getVisualBounds();
    return scene.getWidth() > room.getWidth() || scene.getHeight() > room.getHeight();
  }

  private void dress(Scene scene, Settings now) {
    List<String> sheets = Dress.sheets(now.theme());
    if (!scene.getStylesheets().equals(sheets)) {
      scene.getStylesheets().setAll(sheets);
    }
    view.setStyle(Dress.letters(now.textPercent()));
  }

  /** Which screen is shown. */
  WindowViewModel window() {
    return window;
  }

  SettingsViewModel settings() {
    return settings;
  }

  /** Does something long off the JavaFX thread, with progress and a way to stop it. */
  LongWork work() {
    return work;
  }

  /** Shows a job's findings; an empty stage is the latest that was measured. */
  void open(String newJob, String stage) {
    choose(newJob, stage);
    window.screen().set(Screen.FINDINGS);
  }

  /** Leads to measuring a stage of a job. */
  private void measure(String newJob, String stage) {
    choose(newJob, stage);
    window.screen().set(Screen.MEASURE);
  }

  private void choose(String newJob, String stage) {
    job = newJob;
    parts.forEach(part -> part.choose(newJob, stage));
    chosen.accept(newJob);
    remember(Map.of("job", newJob, "stage", stage));
  }

  private void screenChosen(Screen screen) {
    chooseIfNeeded();
    allJobsWanted.accept(shownPart().isOfAllJobs());
    shownPart().show(state);
    remember(Map.of("screen", screen.id()));
  }

  private void remember(Map<String, String> shown) {
    settings.become(settings.now().withLast(shown));
  }

  private void set(Settings before, Settings now, Consumer<Settings> keep) {
    keep.accept(now);
    if (before.units() != now.units()) {
      parts.forEach(ScreenPart::forget);
      shownPart().show(state);
    }
  }

  private void textStep(int step) {
    if (step > 0) {
      settings.largerText();
    } else {
      settings.smallerText();
    }
  }

  private ScreenPart shownPart() {
    Screen shown = window.screen().get();
    return parts.stream().filter(part -> part.screen() == shown).findFirst().orElseThrow();
  }

  private void inBackground(String name, Runnable task, Runnable done, Consumer<Exception> failed) {
    boolean begun =
        work.start(
            name,
            progress -> {
              task.run();
              return name;
            },
            finished -> done.run(),
            failed);
    if (!begun) {
      failed.accept(new OuterWorldException(words.text("work.busy", name)));
    }
  }

  private void cancelWork() {
    work.cancel();
  }
}
