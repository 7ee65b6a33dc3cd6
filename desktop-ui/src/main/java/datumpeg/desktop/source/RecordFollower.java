package datumpeg.desktop.source;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.IntegrityException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Follows a record: each turn looks whether rows were added, reads the list of jobs, works out
 * those that changed, as many as fit into a turn, and publishes the state. The job on screen is
 * worked out whole, of the others only how they stand. A record that cannot be read is tried again
 * every turn. One to which nothing can be added is closed after each turn and looked at every few
 * seconds.
 *
 * <p>{@link #preferred} and {@link #outcomesWanted} may be called from any thread; all else from
 * one.
 */
public final class RecordFollower implements AutoCloseable {
  private static final int TURNS_TO_REST_AFTER_A_DEFECT = 20;

  /** After so long a turn ends, so that what was added meanwhile, and who closes, need not wait. */
  private static final Duration LONGEST_TURN = Duration.ofMillis(150);

  /**
   * While nothing but outcomes of jobs is added, a state is published only so often: of each, a
   * screen draws its conclusions from all outcomes anew.
   */
  private static final Duration BETWEEN_MORE_OUTCOMES = Duration.ofMillis(600);

  /** Nothing is added to a record on a full or read-only disk: such a one is looked at so often. */
  private static final Duration BETWEEN_LOOKS = Duration.ofSeconds(5);

  private final JobSource.Opening opening;
  private final Clock clock;
  private final Consumer<RecordState> publish;
  private final LongSupplier nanoTime;

  private RecordState state;
  private RecordState published;
  private long publishedNanos;
  private @Nullable JobSource source;
  private String identity = "";
  private long counter;
  private boolean current;
  private String obstacle = "";
  private long lookedNanos;
  private int turnsToRest;
  private volatile String preferred = "";
  private volatile boolean outcomesWanted;

  /**
   * A follower that has not looked yet.
   *
   * @param publish is given every new state, on the following thread
   */
  public RecordFollower(
      String file, JobSource.Opening opening, Clock clock, Consumer<RecordState> publish) {
    this(file, opening, clock, publish, System::nanoTime);
  }

  /**
   * The same by a stopwatch of its own.
   *
   * @param nanoTime how long turns last, and states stand, is told by it
   */
  RecordFollower(
      String file,
      JobSource.Opening opening,
      Clock clock,
      Consumer<RecordState> publish,
      LongSupplier nanoTime) {
    this.state = RecordState.unread(file);
    this.published = state;
    this.opening = opening;
    this.clock = clock;
    this.publish = publish;
    this.nanoTime = nanoTime;
    this.publishedNanos = nanoTime.getAsLong();
  }

  /** The job on screen is worked out before the others, and whole. */
  public void preferred(String job) {
    preferred = job;
  }

  /** Whether a screen asks for the outcomes of all jobs. */
  public void outcomesWanted(boolean wanted) {
    outcomesWanted = wanted;
  }

  /** One look at the record. Publishes nothing when nothing changed. */
  public void turn() {
    if (turnsToRest > 0) {
      turnsToRest--;
      return;
    }
    if (isBetweenLooks()) {
      return;
    }
    try {
      JobSource open = opened();
      obstacle = open.obstacle();
      long found = open.changeCounter();
      if (!current || found != counter) {
        counter = found;
        becomes(reached(listed(open.jobs())));
        current = true;
      }
      workOut(open);
      if (!obstacle.isEmpty()) {
        close();
        lookedNanos = nanoTime.getAsLong();
      }
    } catch (FailureException e) {
      close();
      obstacle = "";
      becomes(state.outOfReach(String.valueOf(e.getMessage())));
    }
  }

  private boolean isBetweenLooks() {
    return !obstacle.isEmpty()
        && nanoTime.getAsLong() - lookedNanos < BETWEEN_LOOKS.toNanos()
        && unsettled(state.jobs()).isEmpty();
  }

  /**
   * A defect of ours: said on screen too, so that what is shown is not taken for the present. The
   * next turns do nothing, so that a lasting defect does not keep the machine busy.
   */
  public void failed(String sentence) {
    close();
    obstacle = "";
    turnsToRest = TURNS_TO_REST_AFTER_A_DEFECT;
    becomes(state.outOfReach(sentence));
  }

  @Override
  public void close() {
    JobSource open = source;
    source = null;
    current = false;
    if (open != null) {
      open.close();
    }
  }

  private JobSource opened() {
    JobSource open = source;
    if (open != null && opening.identity().equals(identity)) {
      return open;
    }
    close();
    identity = opening.identity();
    JobSource fresh = opening.open();
    source = fresh;
    return fresh;
  }

  /** Works out what is not settled, the job on screen first, until the turn has lasted enough. */
  private void workOut(JobSource open) {
    long end = nanoTime.getAsLong() + LONGEST_TURN.toNanos();
    List<JobState> jobs = new ArrayList<>(state.jobs());
    boolean news = letGo(jobs);
    List<Integer> todo = unsettled(jobs);
    int done = 0;
    while (done < todo.size() && (done == 0 || nanoTime.getAsLong() < end)) {
      int index = todo.get(done++);
      JobState job = jobs.get(index);
      jobs.set(index, workedOut(open, job));
      news |= !job.settled();
      if (isPreferred(job)) {
        becomes(reached(jobs));
      }
    }
    RecordState now = news || done > 0 ? reached(jobs) : state;
    if (news || done == todo.size() || isTimeForMoreOutcomes()) {
      becomes(now);
    } else {
      state = now;
    }
  }

  private boolean isTimeForMoreOutcomes() {
    return nanoTime.getAsLong() - publishedNanos >= BETWEEN_MORE_OUTCOMES.toNanos();
  }

  /** Drops what only the job on screen, or a screen that asks no longer, had need of. */
  private boolean letGo(List<JobState> jobs) {
    boolean changed = false;
    for (int i = 0; i < jobs.size(); i++) {
      JobState job = jobs.get(i);
      boolean work = job.work().isPresent() && !isPreferred(job);
      boolean outcomes = job.outcomes().isPresent() && !outcomesWanted;
      if (work || outcomes) {
        JobState less = work ? job.withoutWork() : job;
        jobs.set(i, outcomes ? less.withoutOutcomes() : less);
        changed = true;
      }
    }
    return changed;
  }

  private boolean isPreferred(JobState job) {
    return job.row().id().equals(preferred);
  }

  private List<JobState> listed(List<JobRow> rows) {
    Map<String, JobState> known = new HashMap<>();
    state.jobs().forEach(job -> known.put(job.row().id(), job));
    List<JobState> jobs = new ArrayList<>();
    for (JobRow row : rows) {
      JobState before = known.get(row.id());
      jobs.add(before == null ? JobState.listed(row) : before.listedAgain(row));
    }
    return jobs;
  }

  private RecordState reached(List<JobState> jobs) {
    return new RecordState(state.file(), true, obstacle, Optional.of(clock.instant()), jobs);
  }

  /** Positions of the jobs to be worked out, the preferred one first. */
  private List<Integer> unsettled(List<JobState> jobs) {
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < jobs.size(); i++) {
      if (lacksSomething(jobs.get(i))) {
        open.add(i);
      }
    }
    open.sort(Comparator.comparing(i -> !isPreferred(jobs.get(i))));
    return open;
  }

  private boolean lacksSomething(JobState job) {
    boolean work = isPreferred(job) && job.work().isEmpty() && job.trouble().isEmpty();
    boolean outcomes = outcomesWanted && job.outcomes().isEmpty();
    return !job.settled() || work || outcomes;
  }

  /** A job whose file or readings cannot be made sense of must not hide the others. */
  private JobState workedOut(JobSource open, JobState job) {
    JobRow row = job.row();
    try {
      JobState done = job;
      if (isPreferred(job) && (!job.settled() || job.work().isEmpty())) {
        ReducedJob work = open.reduce(row);
        done = JobState.workedOut(row, work);
      } else if (!job.settled()) {
        done = job.with(open.overview(row));
      }
      return outcomesWanted ? done.with(open.outcomes(row)) : done;
    } catch (InputException | IntegrityException e) {
      return JobState.cannot(row, String.valueOf(e.getMessage()));
    }
  }

  private void becomes(RecordState next) {
    state = next;
    if (!next.equals(published)) {
      published = next;
      publishedNanos = nanoTime.getAsLong();
      publish.accept(next);
    }
  }
}
