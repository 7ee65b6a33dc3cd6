package datumpeg.desktop.signoff;

import datumpeg.analysis.signoff.Cautions;
import datumpeg.analysis.signoff.HoldPoint;
import datumpeg.analysis.signoff.SignOffItem;
import datumpeg.desktop.signoff.SignOffPage.Item;
import datumpeg.desktop.signoff.SignOffPage.StageChoice;
import datumpeg.desktop.source.JobState;
import datumpeg.desktop.source.RecordState;
import datumpeg.desktop.source.ReducedJob;
import datumpeg.desktop.text.Standing;
import datumpeg.desktop.text.Words;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * The check list of one stage of one job, and who signs it.
 *
 * <p>One thread, the toolkit's when there is one.
 */
public final class SignOffViewModel {

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
  private final Desk desk;
  private final Background background;
  private final ReadOnlyObjectWrapper<SignOffPage> page = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private RecordState state = RecordState.unread("");
  private String job = "";
  private String stage = "";

  /** The check list of no job. */
  public SignOffViewModel(Words words, Desk desk, Background background) {
    this.words = words;
    this.desk = desk;
    this.background = background;
    refresh();
  }

  public void show(RecordState newState) {
    state = newState;
    refresh();
  }

  /**
   * Chooses the job.
   *
   * @param newStage its stage; empty for the first whose hold point is open
   */
  public void choose(String newJob, String newStage) {
    job = newJob;
    stage = newStage;
    said.set("");
    refresh();
  }

  void chooseStage(String newStage) {
    choose(job, newStage);
  }

  void sign(String by) {
    String signed = shownStage();
    background.run(
        words.text("signoff.signing"),
        () -> desk.sign(job, signed, by),
        () -> said.set(words.text("signoff.signed-now", by)),
        this::failed);
  }

  void accept(String item, Desk.Acceptor acceptor) {
    String at = shownStage();
    background.run(
        words.text("signoff.accepting"),
        () -> desk.accept(job, at, item, acceptor),
        () -> said.set(words.text("signoff.accepted-now", title(item))),
        this::failed);
  }

  /** Keeps a copy of a photo with the shown stage. */
  void attach(Path photo, String by) {
    String at = shownStage();
    String name = String.valueOf(photo.getFileName());
    background.run(
        words.text("signoff.attaching"),
        () -> desk.attach(job, at, by, photo),
        () -> said.set(words.text("signoff.attached-now", name, words.stage(at))),
        this::failed);
  }

  ReadOnlyObjectProperty<SignOffPage> page() {
    return page.getReadOnlyProperty();
  }

  /** What came of the last signature or acceptance. */
  ReadOnlyStringProperty said() {
    return said.getReadOnlyProperty();
  }

  Words words() {
    return words;
  }

  private void failed(Exception failure) {
    said.set(String.valueOf(failure.getMessage()));
  }

  private String shownStage() {
    return page.get().stages().stream()
        .filter(StageChoice::chosen)
        .map(StageChoice::stage)
        .findFirst()
        .orElse("");
  }

  private void refresh() {
    page.set(
        job.isEmpty()
            ? SignOffPage.empty("", words.text("signoff.no-job"))
            : state
                .job(job)
                .map(this::page)
                .orElseGet(() -> SignOffPage.empty(job, words.text("findings.unknown-job", job))));
  }

  private SignOffPage page(JobState jobState) {
    String name = jobState.row().name().isEmpty() ? job : jobState.row().name();
    Optional<ReducedJob> work = jobState.work();
    if (work.isEmpty()) {
      String trouble = jobState.trouble();
      return SignOffPage.empty(name, trouble.isEmpty() ? words.text("findings.working") : trouble);
    }
    List<HoldPoint> points = work.get().holdPoints();
    return chosen(points)
        .map(point -> page(name, work.get(), points, point))
        .orElseGet(() -> SignOffPage.empty(name, words.text("signoff.none")));
  }

  /** The stage asked for, else the first that is open, else the last that was begun. */
  private Optional<HoldPoint> chosen(List<HoldPoint> points) {
    Optional<HoldPoint> asked =
        points.stream().filter(point -> point.stage().id().equals(stage)).findFirst();
    Optional<HoldPoint> open =
        points.stream()
            .filter(
                point ->
                    point.state() == HoldPoint.State.OPEN
                        || point.state() == HoldPoint.State.TO_SIGN)
            .findFirst();
    return asked.or(() -> open).or(() -> points.stream().findFirst());
  }

  private SignOffPage page(String name, ReducedJob work, List<HoldPoint> points, HoldPoint shown) {
    List<String> cautions = new ArrayList<>(Cautions.of(work.job(), shown.stage().id()));
    cautions.add(Cautions.WHO_DECIDES);
    return new SignOffPage(
        name,
        "",
        points.stream().map(point -> choice(point, point.equals(shown))).toList(),
        answer(shown),
        shown.items().stream()
            .sorted(Comparator.comparing(SignOffItem::isClosed))
            .map(this::item)
            .toList(),
        shown.state() == HoldPoint.State.TO_SIGN,
        work.photos().getOrDefault(shown.stage().id(), List.of()),
        cautions);
  }

  private StageChoice choice(HoldPoint point, boolean shown) {
    return new StageChoice(
        point.stage().id(),
        words.stage(point.stage().id()),
        words.text("signoff.state." + word(point.state())),
        shown);
  }

  private String answer(HoldPoint point) {
    if (point.state() == HoldPoint.State.OPEN) {
      return words.count("signoff.open-items", point.open().size(), point.items().size());
    }
    String by = point.signature().map(one -> one.by()).orElse("");
    return words.text("signoff.answer." + word(point.state()), by);
  }

  private Item item(SignOffItem item) {
    return new Item(
        item.key(),
        title(item.key()),
        words.told(item.found()),
        mark(item.how()),
        !item.isClosed(),
        words.text("signoff.how." + word(item.how())),
        item.acceptance()
            .map(one -> words.text("signoff.accepted", one.by(), one.reference(), one.why()))
            .orElse(""));
  }

  /** An outcome is called by its check's name. */
  private String title(String key) {
    int space = key.indexOf(' ');
    if (space < 0) {
      return words.text("signoff.item." + key);
    }
    String first = key.substring(0, space);
    return first.equals("question")
        ? words.text("signoff.item.question")
        : words.check(first) + key.substring(space);
  }

  private static Standing mark(SignOffItem.How how) {
    return switch (how) {
      case CONFORMS, REWORKED, ACCEPTED, ANSWERED -> Standing.CONFORMING;
      case NONCONFORMING, ANSWERED_NO, CONTRADICTION -> Standing.NONCONFORMING;
      case UNDECIDED -> Standing.UNDECIDED;
      case STALE -> Standing.STALE;
      case NOT_MEASURED, NOT_ANSWERED -> Standing.NOT_MEASURED;
    };
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
