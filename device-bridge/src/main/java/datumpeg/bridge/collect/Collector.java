package datumpeg.bridge.collect;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.MeasuredQuantity;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Target;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import datumpeg.bridge.record.entry.VoidEntry;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
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
  private final JobKey key;
  private final RecordSession session;
  private final TimeOrderedIds ids;
  private final String operator;
  private final Deque<ReadingEntry> accepted = new ArrayDeque<>();
  private int position;
  private @Nullable Wanted current;
  private @Nullable Delivered waiting;

  /**
   * @param list what to ask for, in order
   * @param moved what was moved so far; decides the round of each reading
   */
  public Collector(
      Job job,
      String stage,
      List<Wanted> list,
      List<MovedThing> moved,
      JobKey key,
      RecordSession session,
      TimeOrderedIds ids,
      String operator) {
    this.job = job;
    this.stage = stage;
    this.list = List.copyOf(list);
    this.moved = List.copyOf(moved);
    this.key = key;
    this.session = session;
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
    current = new Wanted(target, face, java.util.OptionalDouble.empty());
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

  /** Puts aside the value that waits; false if none does. */
  public boolean hold() {
    boolean held = waiting != null;
    waiting = null;
    return held;
  }

  /** Takes a value in; it becomes a reading only when accepted. */
  public Offer offer(Delivered delivered) {
    Wanted wanted = current;
    if (wanted == null) {
      return Offer.NO_TARGET;
    }
    MeasuredQuantity quantity = wanted.target().quantity();
    if (quantity.dimension() != delivered.dimension()) {
      return Offer.OTHER_QUANTITY;
    }
    boolean impossible =
        (quantity == MeasuredQuantity.DISTANCE && !(delivered.valueSi() > 0))
            || (quantity == MeasuredQuantity.TILT
                && Math.abs(delivered.valueSi()) >= StrictMath.PI / 2);
    if (impossible) {
      return Offer.IMPOSSIBLE;
    }
    waiting = delivered;
    return Offer.WAITING;
  }

  /**
   * Stores the value that waits as a reading of the current target and asks for the next.
   *
   * @return what was stored, after its commit; empty if no value waits
   */
  public Optional<StoredEntry<ReadingEntry>> accept() {
    Wanted wanted = current;
    Delivered delivered = waiting;
    if (wanted == null || delivered == null) {
      return Optional.empty();
    }
    StoredEntry<ReadingEntry> stored = session.append(key, reading(wanted, delivered));
    accepted.push(stored.entry());
    skip();
    return Optional.of(stored);
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
    session.append(key, new VoidEntry(last.id(), "undone while measuring"));
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
        .round(MovedThing.roundOf(target, moved))
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
