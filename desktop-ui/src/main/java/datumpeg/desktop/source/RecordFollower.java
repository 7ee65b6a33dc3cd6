package datumpeg.desktop.source;

import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.IntegrityException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Follows a record: each turn looks whether rows were added, reads the list of jobs, works out
 * those that changed and publishes the state. A record that cannot be read is tried again every
 * turn.
 *
 * <p>{@link #preferred} may be called from any thread; all else from one.
 */
public final class RecordFollower implements AutoCloseable {
  private static final int TURNS_TO_REST_AFTER_A_DEFECT = 20;

  private final JobSource.Opening opening;
  private final Clock clock;
  private final Consumer<RecordState> publish;

  private RecordState state;
  private @Nullable JobSource source;
  private String identity = "";
  private long counter;
  private boolean current;
  private int turnsToRest;
  private volatile String preferred = "";

  /**
   * A follower that has not looked yet.
   *
   * @param publish is given every new state, on the following thread
   */
  public RecordFollower(
      String file, JobSource.Opening opening, Clock clock, Consumer<RecordState> publish) {
    this.state = RecordState.unread(file);
    this.opening = opening;
    this.clock = clock;
    this.publish = publish;
  }

  /** The job on screen is worked out before the others. */
  public void preferred(String job) {
    preferred = job;
  }

  /** One look at the record. Publishes nothing when nothing changed. */
  public void turn() {
    if (turnsToRest > 0) {
      turnsToRest--;
      return;
    }
    try {
      JobSource open = opened();
      long found = open.changeCounter();
      if (!current || found != counter) {
        counter = found;
        read(open);
        current = true;
      }
    } catch (FailureException e) {
      close();
      becomes(state.outOfReach(String.valueOf(e.getMessage())));
    }
  }

  /**
   * A defect of ours: said on screen too, so that what is shown is not taken for the present. The
   * next turns do nothing, so that a lasting defect does not keep the machine busy.
   */
  public void failed(String sentence) {
    close();
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

  private void read(JobSource open) {
    List<JobState> jobs = listed(open.jobs());
    becomes(reached(jobs));
    for (int index : unsettled(jobs)) {
      jobs.set(index, workedOut(open, jobs.get(index).row()));
      becomes(reached(jobs));
    }
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
    return new RecordState(state.file(), true, "", Optional.of(clock.instant()), jobs);
  }

  /** Positions of the jobs to be worked out, the preferred one first. */
  private List<Integer> unsettled(List<JobState> jobs) {
    List<Integer> open = new ArrayList<>();
    for (int i = 0; i < jobs.size(); i++) {
      if (!jobs.get(i).settled()) {
        open.add(i);
      }
    }
    String first = preferred;
    open.sort(Comparator.comparing(i -> !jobs.get(i).row().id().equals(first)));
    return open;
  }

  /** A job whose file or readings cannot be made sense of must not hide the others. */
  private static JobState workedOut(JobSource open, JobRow row) {
    try {
      return JobState.workedOut(row, open.reduce(row));
    } catch (InputException | IntegrityException e) {
      return JobState.cannot(row, String.valueOf(e.getMessage()));
    }
  }

  private void becomes(RecordState next) {
    if (!next.equals(state)) {
      state = next;
      publish.accept(next);
    }
  }
}
