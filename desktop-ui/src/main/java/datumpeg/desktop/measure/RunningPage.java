package datumpeg.desktop.measure;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.bridge.collect.GuideState.Question;
import datumpeg.bridge.collect.LiveDeviation;
import datumpeg.bridge.collect.Wanted;
import datumpeg.desktop.measure.MeasurePage.ActButton;
import datumpeg.desktop.measure.MeasurePage.Running;
import datumpeg.desktop.measure.MeasurePage.Stands;
import datumpeg.desktop.measure.MeasurePage.TargetChoices;
import datumpeg.desktop.measure.SessionShot.LinkStand;
import datumpeg.desktop.measure.SessionShot.Said;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Makes of a session as it stands what the screen shows. One thread. */
final class RunningPage {
  /** Of no use while one target is watched. */
  private static final Set<Act> OF_THE_LIST =
      Set.of(Act.SKIP, Act.BACK, Act.AGAIN, Act.UNDO, Act.GO);

  private final Words words;
  private final WantedWords targets;
  private final @Nullable SessionWish wish;
  private final @Nullable SessionShot shot;
  private final String typed;
  private final Remembered remembered;
  private final Optional<TargetChoices> choices;
  private final boolean bytesShown;
  private final boolean footAwaited;

  RunningPage(
      Words words,
      @Nullable SessionWish wish,
      @Nullable SessionShot shot,
      String typed,
      Remembered remembered,
      Optional<TargetChoices> choices,
      boolean bytesShown,
      boolean footAwaited) {
    this.words = words;
    this.targets = new WantedWords(words, shot == null ? Map.of() : shot.questions());
    this.choices = choices;
    this.wish = wish;
    this.shot = shot;
    this.typed = typed;
    this.remembered = remembered;
    this.bytesShown = bytesShown;
    this.footAwaited = footAwaited;
  }

  Running page() {
    SessionShot now = shot;
    return now == null ? opening() : running(now);
  }

  private Running opening() {
    return new Running(
        title(),
        words.text("measure.opening"),
        "",
        "",
        "",
        "",
        Stands.NONE,
        "",
        "",
        List.of(),
        "",
        "",
        typed,
        Optional.empty(),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        "",
        acts(Optional.empty(), false));
  }

  private Running running(SessionShot now) {
    Optional<Wanted> wanted = now.guide().wanted();
    Optional<Question> question = now.guide().question();
    BigValue big = new BigValue(words, targets, now);
    return new Running(
        title(),
        wanted.map(targets::instruction).orElse(words.text("measure.list-done")),
        wanted.map(asked -> expected(now, asked)).orElse(""),
        big.text(),
        big.words(false),
        big.words(true),
        big.stands(),
        next(now),
        now.watched().isPresent() ? "" : question.map(this::question).orElse(""),
        question.filter(held -> held.choices().size() > 1).map(this::choices).orElse(List.of()),
        said(now),
        trouble(now),
        typed,
        wanted.map(asked -> sketch(now, asked)),
        big.bar(),
        now.links(),
        choices,
        bytesShown ? bytes(now) : "",
        acts(question, wanted.filter(Wanted::isQuestion).isPresent()));
  }

  /** What is watched is told as a lean, not as the angle its meter shows. */
  private String expected(SessionShot now, Wanted asked) {
    boolean plumb =
        now.watched().filter(LiveDeviation::isBounded).isPresent()
            && asked.target().quantity() == MeasuredQuantity.TILT
            && asked.expectedSi().orElse(1) == 0;
    return plumb ? words.text("measure.plumb") : targets.expected(asked);
  }

  private String title() {
    SessionWish asked = wish;
    return asked == null ? "" : asked.job() + ", " + words.stage(asked.stage());
  }

  private TargetSketch sketch(SessionShot now, Wanted asked) {
    return new TargetSketcher(now.setOut(), words)
        .sketch(asked.target(), now.guide().open().stream().map(Wanted::target).toList());
  }

  private String next(SessionShot now) {
    if (now.watched().isPresent()) {
      return words.text("measure.watch-next");
    }
    int more = Math.max(0, now.guide().openCount() - 1);
    String then =
        now.guide()
            .next()
            .map(next -> words.text("measure.then", next.words()))
            .orElse(words.text("measure.then-done"));
    String skipped =
        now.guide().skippedCount() == 0
            ? ""
            : "  " + words.count("measure.skipped", now.guide().skippedCount());
    return then + "  " + words.count("measure.more", more) + skipped;
  }

  private String question(Question held) {
    String what = BigValue.value(held.delivered().valueText(), held.delivered().unitText());
    if (held.choices().size() > 1) {
      return words.text("measure.held-which", what, held.why());
    }
    String of = held.choices().isEmpty() ? "" : held.choices().get(0).words();
    return words.text("measure.held", what, of, held.why());
  }

  /** The instruction above says what they have in common. */
  private List<String> choices(Question held) {
    List<String> differing =
        CommonWords.without(held.choices().stream().map(Wanted::words).toList());
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < held.choices().size(); i++) {
      String expected = targets.expected(held.choices().get(i));
      texts.add(words.text("measure.choice", i + 1, differing.get(i), expected));
    }
    return texts;
  }

  private static String said(SessionShot now) {
    List<Said> said = now.said();
    return said.isEmpty() ? "" : said.get(said.size() - 1).sentence();
  }

  private String trouble(SessionShot now) {
    List<String> troubles = new ArrayList<>();
    if (now.waitingCount() > 0) {
      troubles.add(words.count("measure.waiting", now.waitingCount(), now.waitingWhy()));
    }
    now.links().stream().filter(LinkStand::isLost).map(LinkStand::loss).forEach(troubles::add);
    if (now.links().stream().anyMatch(LinkStand::isLost)) {
      troubles.add(words.text("measure.lost"));
    }
    return String.join(" ", troubles);
  }

  private String bytes(SessionShot now) {
    return now.bytes().isEmpty() ? words.text("measure.no-bytes") : String.join("\n", now.bytes());
  }

  private List<ActButton> acts(Optional<Question> held, boolean asked) {
    List<ActButton> buttons = new ArrayList<>();
    SessionWish now = wish;
    boolean watching = now != null && now.isWatch();
    for (Act act : Act.values()) {
      if (isOffered(act, watching)) {
        boolean answer = asked && held.isEmpty() && act.answers();
        boolean which = held.filter(one -> one.choices().size() > 1).isPresent();
        boolean possible =
            !act.answers() || asked || (held.isPresent() && !(which && act == Act.ACCEPT));
        buttons.add(new ActButton(act, answer ? answer(act) : text(act, watching), possible));
      }
    }
    return buttons;
  }

  private boolean isOffered(Act act, boolean watching) {
    SessionShot now = shot;
    return act == Act.MEASURE
        ? now != null && now.canTell()
        : !watching || !OF_THE_LIST.contains(act);
  }

  private String answer(Act act) {
    return act == Act.ACCEPT
        ? words.text("act.with-key", words.text("act.yes"), "Y")
        : words.text("act.with-key", words.text("act.no"), "N");
  }

  private String text(Act act, boolean watching) {
    String name =
        switch (act) {
          case ACCEPT -> words.text(watching ? "act.keep" : "act.accept");
          case TONES -> words.text(remembered.tones() ? "act.tones-off" : "act.tones-on");
          case BYTES -> words.text(bytesShown ? "act.bytes-off" : "act.bytes");
          case GO -> words.text(choices.isPresent() ? "act.go-off" : "act.go");
          case FOOT -> foot();
          default -> words.text("act." + act.id());
        };
    return words.text("act.with-key", name, act.key());
  }

  private String foot() {
    if (footAwaited) {
      return words.text("act.foot-awaited");
    }
    return remembered.footKey().isEmpty()
        ? words.text("act.foot")
        : words.text("act.foot-is", remembered.footKey());
  }
}
