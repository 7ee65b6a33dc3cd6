package datumpeg.bridge.collect;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.entry.VoidEntry;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * One session's way from values to readings: which target is asked for, which value waits, what was
 * accepted. One thread.
 *
 * <p>{@link #accept} returns after the commit; until then nothing is acknowledged.
 */
public final class Collector {
  private final Job job;
  private final String stage;
  private final List<Wanted> list;
  private final List<MovedThing> moved;
  private final ReadingStore store;
  private final TimeOrderedIds ids;
  private final String operator;
  private final Deque<ReadingEntry> accepted = new ArrayDeque<>();
  private int position;
  private OptionalInt roundSaid = OptionalInt.empty();
  private @Nullable Wanted current;
  private @Nullable Delivered waiting;

  /**
   * @param list what to ask for, in order
   * @param moved what was moved so far; decides the round of each reading, unless it is said
   * @param store where readings go
   */
  public Collector(
      Job job,
      String stage,
      List<Wanted> list,
      List<MovedThing> moved,
      ReadingStore store,
      TimeOrderedIds ids,
      String operator) {
    this.job = job;
    this.stage = stage;
    this.list = List.copyOf(list);
    this.moved = List.copyOf(moved);
    this.store = store;
    this.ids = ids;
    this.operator = operator;
    this.current = list.isEmpty() ? null : list.get(0);
  }

  /** What is asked for now; empty when the list is done. */
  public Optional<Wanted> wanted() {
    return Optional.ofNullable(current);
  }

  /** How many of the list come after what is asked for now. */
  public int leftAfterThis() {
    return Math.max(0, list.size() - position - 1);
  }

  /** Asks for a target out of turn; the list goes on behind it if it is in the list. */
  public void goTo(Target target, int face) {
    waiting = null;
    for (int i = 0; i < list.size(); i++) {
      if (list.get(i).target().equals(target) && list.get(i).face() == face) {
        position = i;
        current = list.get(i);
        return;
      }
    }
    current = new Wanted(target, face, OptionalDouble.empty());
  }

  /** The round of the readings that follow, where it does not follow from what was moved. */
  public void round(OptionalInt round) {
    roundSaid = round;
  }

  /** What a reading of the target is a reading of now: the round said, but none that is past. */
  public int roundOf(Target target) {
    return Math.max(roundSaid.orElse(1), MovedThing.roundOf(target, moved));
  }

  /** Whether all that was accepted is in the record. */
  public boolean isStored() {
    return store.waitingCount() == 0;
  }

  /** The targets that wait to be measured, in order; what is asked for now is one of them. */
  public List<Wanted> list() {
    return list;
  }

  /** Leaves the target unmeasured and asks for the next. */
  public void skip() {
    waiting = null;
    position = Math.min(position + 1, list.size());
    current = position < list.size() ? list.get(position) : null;
  }

  /** Asks for the target before this one again. */
  public void back() {
    waiting = null;
    position = Math.max(0, position - 1);
    current = list.isEmpty() ? null : list.get(position);
  }

  /** Takes a value in; it becomes a reading only when accepted. */
  public Offer offer(Delivered delivered) {
    Wanted wanted = current;
    Offer offer = wanted == null ? Offer.NO_TARGET : judge(wanted, delivered);
    if (offer == Offer.WAITING) {
      waiting = delivered;
    }
    return offer;
  }

  /** Whether a value can be a reading of a target. */
  static Offer judge(Wanted wanted, Delivered delivered) {
    MeasuredQuantity quantity = wanted.target().quantity();
    if (!wanted.takes(delivered)) {
      return Offer.OTHER_QUANTITY;
    }
    boolean impossible =
        (quantity == MeasuredQuantity.DISTANCE && !(delivered.valueSi() > 0))
            || (quantity == MeasuredQuantity.TILT
                && Math.abs(delivered.valueSi()) >= StrictMath.PI / 2);
    return impossible ? Offer.IMPOSSIBLE : Offer.WAITING;
  }

  /**
   * Stores the value that waits as a reading of the current target and asks for the next.
   *
   * @return the reading, after its commit or, where the record gives way, after it was put with
   *     those that wait; empty if no value waits
   */
  public Optional<ReadingEntry> accept() {
    Wanted wanted = current;
    Delivered delivered = waiting;
    if (wanted == null || delivered == null) {
      return Optional.empty();
    }
    ReadingEntry reading = reading(wanted, delivered);
    store.keep(reading);
    accepted.push(reading);
    skip();
    return Optional.of(reading);
  }

  /**
   * Withdraws the last reading of this session by a void row, and asks for its target again.
   *
   * @return the reading withdrawn; empty if there is none left
   */
  public Optional<ReadingEntry> undo() {
    ReadingEntry last = accepted.peek();
    if (last == null) {
      return Optional.empty();
    }
    store.keep(new VoidEntry(last.id(), "undone while measuring"));
    accepted.pop();
    MeasuredQuantity quantity = MeasuredQuantity.ofText(last.quantity()).orElseThrow();
    goTo(Target.parse(quantity, last.target()), last.face());
    return Optional.of(last);
  }

  private ReadingEntry reading(Wanted wanted, Delivered delivered) {
    Target target = wanted.target();
    return ReadingEntry.builder(ids.next(), stage, target.quantity().text(), target.text())
        .value(delivered.valueText(), delivered.unitText(), delivered.valueSi())
        .face(wanted.face())
        .meter(meterFor(target.quantity(), delivered.meter()), "", "")
        .round(roundOf(target))
        .readAt(delivered.readAt())
        .operator(operator)
        .link(delivered.link(), delivered.rawHex())
        .source(delivered.source())
        .build();
  }

  /** The instrument named, else the job's only one for the quantity. */
  private String meterFor(MeasuredQuantity quantity, String named) {
    if (!named.isEmpty()) {
      return named;
    }
    List<Meter> fitting =
        job.meters().values().stream().filter(meter -> meter.quantity() == quantity).toList();
    return fitting.size() == 1 ? fitting.get(0).id() : "";
  }
}
