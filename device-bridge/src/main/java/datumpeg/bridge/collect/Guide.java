package datumpeg.bridge.collect;

import datumpeg.bridge.collect.GuideState.Question;
import datumpeg.bridge.link.replay.CaptureEntry.Kind;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Guided measuring as a state machine: values and a person's actions go in, {@link #state} says
 * what to show. It knows no screen, terminal, link or clock, so that a terminal and a window are
 * two faces of one thing. One thread.
 *
 * <p>A value that fits is taken for the target asked for, or for the next open one of its kind: a
 * tilt finds the tilt target, a distance the distance target. A value that does not fit is held and
 * becomes a question. Each act is told to {@link Acts}, which is what a replay goes by; a reading
 * and its withdrawal once they are committed.
 */
public final class Guide {

  /** In which order targets are measured. */
  public enum Order {
    /** As the list says. */
    LISTED,
    /** As values come: each finds its target by what is expected, and is asked about if several. */
    ANY,
    /** As the list says, and each value is only shown until it is confirmed. */
    CONFIRMED
  }

  /** Is told each act. */
  public interface Acts {
    void acted(Kind kind, @Nullable Wanted wanted, @Nullable String text);
  }

  private final Collector collector;
  private final HoldRule rule;
  private final Order order;
  private final OptionalInt round;
  private final Acts acts;
  private final SessionWatcher watcher;
  private final List<Wanted> list;
  private final Set<Wanted> measured = new HashSet<>();
  private final Set<Wanted> skipped = new HashSet<>();
  private final List<ReadingEntry> taken = new ArrayList<>();
  private final List<Wanted> takenFor = new ArrayList<>();
  private @Nullable Wanted current;
  private @Nullable Question question;
  private long questionNumber;
  private long valueCount;

  /** The number of the value that was taken last without a person's word; 0 for none. */
  private long lastTakenByItself;

  /**
   * @param collector whose list are the targets still to be measured
   * @param round of the readings, where it does not follow from what was moved
   */
  public Guide(
      Collector collector,
      HoldRule rule,
      Order order,
      OptionalInt round,
      Acts acts,
      SessionWatcher watcher) {
    this.collector = collector;
    this.rule = rule;
    this.order = order;
    this.round = round;
    this.acts = acts;
    this.watcher = watcher;
    this.list = new ArrayList<>(collector.list());
    this.current = list.isEmpty() ? null : list.get(0);
  }

  public GuideState state() {
    return new GuideState(
        Optional.ofNullable(current),
        Optional.ofNullable(current).map(this::next).filter(next -> !next.equals(current)),
        list.stream().filter(this::isOpen).toList(),
        skipped.size(),
        taken.isEmpty() ? Optional.empty() : Optional.of(taken.get(taken.size() - 1)),
        Optional.ofNullable(question));
  }

  /** Readings taken and not withdrawn. */
  public long takenCount() {
    return taken.size();
  }

  /** Whether a value is taken as soon as it comes, where nothing speaks against it. */
  boolean takesByItself() {
    return order != Order.CONFIRMED;
  }

  public HoldRule rule() {
    return rule;
  }

  /** Says what is asked for now, as at the beginning. */
  public void ask() {
    if (current != null) {
      acts.acted(Kind.TARGET, current, ActText.ofRound(roundOf(current)));
      watcher.asking(current, Math.max(0, state().openCount() - 1));
    }
  }

  /** Puts further targets behind the list, such as repeats that would decide something. */
  public void further(List<Wanted> more) {
    more.forEach(measured::remove);
    more.stream().filter(wanted -> !list.contains(wanted)).forEach(list::add);
    if (current == null && !more.isEmpty()) {
      current = more.get(0);
      ask();
    }
  }

  /** A value came. A value that is held gives way to a newer one. */
  public void value(Delivered delivered) {
    valueCount++;
    putAsideHeld("a newer value came");
    if (current == null) {
      putAside(valueCount, "it came when nothing was asked for");
      return;
    }
    List<Wanted> places = candidates().of(delivered, order == Order.ANY);
    if (places.isEmpty()) {
      putAside(valueCount, said(delivered) + " is not the kind of value any target left takes");
      return;
    }
    place(delivered, places);
  }

  private void place(Delivered delivered, List<Wanted> places) {
    Wanted first = places.get(0);
    Optional<String> doubt = rule.doubt(first, delivered.valueSi());
    if (impossible(first, delivered)) {
      putAside(valueCount, said(delivered) + " cannot be a reading of " + first.words());
    } else if (order == Order.CONFIRMED) {
      hold(delivered, "it is not confirmed.", places);
    } else if (doubt.isPresent()) {
      hold(delivered, doubt.get(), candidates().withElsewhere(first, delivered));
    } else if (order == Order.ANY && places.size() > 1) {
      hold(delivered, "it could be one of several targets.", places);
    } else {
      take(valueCount, delivered, first);
      lastTakenByItself = valueCount;
    }
  }

  /**
   * A value came late: nobody can know what it was aimed at.
   *
   * @param why a sentence that begins with "it"
   */
  public void late(Delivered delivered, String why) {
    if (order == Order.CONFIRMED) {
      value(delivered);
      return;
    }
    valueCount++;
    putAsideHeld("a newer value came");
    List<Wanted> places = candidates().of(delivered, order == Order.ANY);
    if (places.isEmpty()) {
      putAside(valueCount, said(delivered) + " came late and fits nothing that is asked for");
    } else {
      hold(delivered, why + alsoDoubtful(delivered, places), places);
    }
  }

  private String alsoDoubtful(Delivered delivered, List<Wanted> places) {
    return places.size() > 1
        ? ""
        : rule.doubt(places.get(0), delivered.valueSi()).map(doubt -> " Also " + doubt).orElse("");
  }

  /**
   * A value came so soon behind another of its kind that one of them was kept back somewhere. If
   * the other was taken, it is withdrawn: it may have been an old one too.
   */
  public void soonBehindAnother(Delivered delivered) {
    if (lastTakenByItself == valueCount && isOfOneKind(delivered)) {
      undo();
    }
    late(delivered, "it came within a second of another, so what it was aimed at is not known.");
  }

  private boolean isOfOneKind(Delivered delivered) {
    Optional<ReadingEntry> last = state().last();
    return last.isPresent()
        && last.get().link().equals(delivered.link())
        && takenFor.get(takenFor.size() - 1).target().quantity().dimension()
            == delivered.dimension();
  }

  /** The message that brought the value before came a second time. */
  public void repeated(Delivered delivered) {
    valueCount++;
    putAside(valueCount, said(delivered) + " came twice: the same message again");
  }

  /** The held value is right. */
  public void accept() {
    Question held = question;
    if (held != null && held.choices().size() > 1) {
      watcher.putAside("several targets are possible: say which by its number");
    } else {
      choose(0);
    }
  }

  /** The held value is a reading of one of the choices. */
  public void choose(int choice) {
    Question held = question;
    if (held == null || choice < 0 || choice >= held.choices().size()) {
      watcher.putAside("there is no such choice");
      return;
    }
    question = null;
    take(questionNumber, held.delivered(), held.choices().get(choice));
  }

  /** The held value is wrong: it is put aside and its target asked for again. */
  public void again() {
    putAsideHeld("its target is to be measured again");
    ask();
  }

  /** Leaves the target out for now. */
  public void skip() {
    putAsideHeld("its target was skipped");
    Wanted left = current;
    if (left == null) {
      return;
    }
    acts.acted(Kind.SKIP, null, null);
    skipped.add(left);
    current = next(left);
    ask();
  }

  /** Asks for the target before this one in the list, measured or not. */
  public void back() {
    putAsideHeld("the person went back");
    int position = current == null ? list.size() : list.indexOf(current);
    if (!list.isEmpty()) {
      Wanted before = list.get(Math.max(0, position - 1));
      acts.acted(Kind.BACK, null, null);
      measured.remove(before);
      skipped.remove(before);
      current = before;
      ask();
    }
  }

  /**
   * Asks for a target of the stage out of turn, measured or not; the list goes on behind it. One
   * that is not in the list is put before the target that was asked for.
   */
  public void goTo(Wanted wanted) {
    putAsideHeld("another target was chosen");
    Wanted asked = current;
    if (!list.contains(wanted)) {
      list.add(asked == null ? list.size() : list.indexOf(asked), wanted);
    }
    measured.remove(wanted);
    skipped.remove(wanted);
    current = wanted;
    ask();
  }

  /** Withdraws the reading taken last by a void row and asks for its target again. */
  public void undo() {
    putAsideHeld("the reading before it was undone");
    if (taken.isEmpty()) {
      watcher.putAside("nothing of this session is left to undo");
      return;
    }
    collector
        .undo()
        .ifPresent(
            reading -> {
              acts.acted(Kind.UNDO, null, null);
              taken.remove(taken.size() - 1);
              Wanted wanted = takenFor.remove(takenFor.size() - 1);
              measured.remove(wanted);
              current = wanted;
              watcher.withdrawn(reading);
              ask();
            });
  }

  private Candidates candidates() {
    return new Candidates(list.stream().filter(this::isOpen).toList(), current, list, rule);
  }

  private boolean impossible(Wanted wanted, Delivered delivered) {
    return Collector.judge(wanted, delivered) == Offer.IMPOSSIBLE;
  }

  private void hold(Delivered delivered, String why, List<Wanted> choices) {
    Question asked = new Question(delivered, why, choices);
    question = asked;
    questionNumber = valueCount;
    watcher.held(asked);
  }

  private void take(long number, Delivered delivered, Wanted wanted) {
    Wanted asked = current;
    if (!wanted.equals(asked)) {
      acts.acted(Kind.TARGET, wanted, ActText.ofRound(roundOf(wanted)));
    }
    collector.round(round);
    collector.goTo(wanted.target(), wanted.face());
    collector.offer(delivered);
    collector
        .accept()
        .ifPresent(
            reading -> {
              acts.acted(Kind.ACCEPT, wanted, ActText.ofValue(number));
              taken.add(reading);
              takenFor.add(wanted);
              measured.add(wanted);
              skipped.remove(wanted);
              if (collector.isStored()) {
                watcher.recorded(reading);
              }
            });
    current = asked != null && isOpen(asked) ? asked : next(wanted);
    ask();
  }

  /** The next open target behind one, else the first open; skipped ones are not asked again. */
  private @Nullable Wanted next(Wanted behind) {
    int position = list.indexOf(behind);
    return list.stream()
        .filter(wanted -> isOpen(wanted) && !skipped.contains(wanted))
        .min(Comparator.comparing(wanted -> list.indexOf(wanted) <= position))
        .orElse(null);
  }

  private boolean isOpen(Wanted wanted) {
    return !measured.contains(wanted);
  }

  private int roundOf(Wanted wanted) {
    collector.round(round);
    return collector.roundOf(wanted.target());
  }

  private void putAsideHeld(String why) {
    Question held = question;
    if (held != null) {
      question = null;
      if (order == Order.CONFIRMED) {
        acts.acted(Kind.HELD, null, ActText.ofValue(questionNumber));
      } else {
        putAside(questionNumber, said(held.delivered()) + " is not taken: " + why);
      }
    }
  }

  private void putAside(long number, String why) {
    acts.acted(Kind.HELD, null, ActText.ofValue(number));
    watcher.putAside(why);
  }

  private static String said(Delivered delivered) {
    return (delivered.valueText() + " " + delivered.unitText()).strip();
  }
}
