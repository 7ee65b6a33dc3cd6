package datumpeg.desktop.measure;

import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.collect.GuideState.Question;
import datumpeg.bridge.collect.LiveDeviation;
import datumpeg.bridge.collect.Wanted;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.desktop.measure.MeasurePage.Bar;
import datumpeg.desktop.measure.MeasurePage.Stands;
import datumpeg.desktop.text.Words;
import java.util.Optional;

/** The value to be read from afar: the one held or watched, else the one taken last. One thread. */
final class BigValue {
  private static final double MILLIMETRES = 1000;

  private final Words words;
  private final WantedWords targets;
  private final SessionShot now;

  BigValue(Words words, WantedWords targets, SessionShot now) {
    this.words = words;
    this.targets = targets;
    this.now = now;
  }

  /** Whether the watched value that stands is inside its limit for sure. */
  static boolean isInside(SessionShot shot) {
    return shot.watched()
        .flatMap(live -> standing(shot).map(si -> live.isInside(live.deviationMetres(si))))
        .orElse(false);
  }

  private static Optional<Double> standing(SessionShot shot) {
    return shot.guide()
        .question()
        .map(question -> question.delivered().valueSi())
        .or(() -> shot.guide().last().map(ReadingEntry::siValue));
  }

  /** What is shown largest. */
  String text() {
    Optional<LiveDeviation> live = now.watched().filter(LiveDeviation::isBounded);
    if (live.isPresent()) {
      return standing(now)
          .map(si -> words.figures().deviation(live.get().deviationMetres(si)))
          .orElse("");
    }
    return now.guide()
        .question()
        .map(held -> value(held.delivered().valueText(), held.delivered().unitText()))
        .or(() -> now.guide().last().map(last -> value(last.value(), last.unit())))
        .orElse("");
  }

  static String value(String text, String unit) {
    String written = (text + " " + unit).strip().replace('-', '−');
    return unit.equals("deg") ? written.replace(" deg", "°") : written;
  }

  /**
   * What it is.
   *
   * @param inShort in a few words, where there is little room
   */
  String words(boolean inShort) {
    Optional<Question> question = now.guide().question();
    if (now.watched().isPresent()) {
      boolean kept = question.isEmpty() && now.guide().last().isPresent();
      return kept
          ? words.text("measure.kept")
          : question
              .map(held -> watchedWords(held, now.watched().get(), inShort))
              .orElseGet(() -> words.text("measure.watch-nothing"));
    }
    if (question.isPresent()) {
      return words.text("measure.held-value");
    }
    return now.guide()
        .last()
        .map(last -> lastWords(last, inShort))
        .orElse(words.text("measure.no-reading"));
  }

  /** How the watched value stands, as it came, and which way it goes. */
  private String watchedWords(Question held, LiveDeviation live, boolean inShort) {
    String came = value(held.delivered().valueText(), held.delivered().unitText());
    if (!live.isBounded()) {
      return words.text("measure.watch-free", came);
    }
    double off = live.deviationMetres(held.delivered().valueSi());
    String toward = new Direction(words, live.wanted().target()).of(off);
    String told =
        toward.isEmpty()
            ? came
            : inShort ? toward : words.text("measure.watch-value", came, toward);
    return words.text(verdict(live, off), told);
  }

  private static String verdict(LiveDeviation live, double offMetres) {
    if (live.isInside(offMetres)) {
      return "measure.watch-inside";
    }
    return Math.abs(offMetres) - live.uncertaintyMetres() > live.limitMetres()
        ? "measure.watch-outside"
        : "measure.watch-close";
  }

  private String lastWords(ReadingEntry last, boolean inShort) {
    Target target =
        Target.parse(MeasuredQuantity.ofText(last.quantity()).orElseThrow(), last.target());
    Wanted taken = new Wanted(target, last.face(), MeasuringList.expectedSi(now.setOut(), target));
    String off = targets.offPlan(taken, last.siValue());
    String recorded =
        inShort
            ? words.text("measure.last-value-short")
            : words.text("measure.last-value", taken.words());
    return recorded + (off.isEmpty() ? "" : ", " + off);
  }

  Stands stands() {
    if (now.watched().isPresent()) {
      return standing(now).isEmpty() ? Stands.NONE : isInside(now) ? Stands.INSIDE : Stands.OUTSIDE;
    }
    if (now.guide().question().isPresent()) {
      return Stands.HELD;
    }
    return now.guide().last().isPresent() ? Stands.RECORDED : Stands.NONE;
  }

  /** The watched value between its limits; empty unless one is watched. */
  Optional<Bar> bar() {
    return now.watched().filter(LiveDeviation::isBounded).map(this::bar);
  }

  private Bar bar(LiveDeviation live) {
    Optional<Double> deviation = standing(now).map(si -> live.deviationMetres(si) * MILLIMETRES);
    String inside = unsigned(live.insideMetres());
    String limit = unsigned(live.limitMetres());
    String off = unsigned(live.uncertaintyMetres());
    Direction toward = new Direction(words, live.wanted().target());
    boolean mirrored = toward.isMirrored();
    return new Bar(
        live.limitMetres() * MILLIMETRES,
        live.insideMetres() * MILLIMETRES,
        deviation,
        live.insideMetres() > 0
            ? words.text("measure.bar", limit, off, inside)
            : words.text("measure.bar-blunt", limit, off),
        live.insideMetres() > 0
            ? words.text("measure.bar-short", limit, inside)
            : words.text("measure.bar-blunt-short", limit, off),
        mirrored ? toward.up() : toward.down(),
        mirrored ? toward.down() : toward.up(),
        mirrored);
  }

  private String unsigned(double metres) {
    return words.figures().deviation(metres).replace("+", "");
  }
}
