package datumpeg.desktop.source;

import datumpeg.bridge.derived.JobOverview;
import datumpeg.bridge.derived.KeptOutcome;
import datumpeg.bridge.failure.FailureException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.jobs.Overviews;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A record in memory that can be made to fail, and takes time; for the thread of the test. */
final class InventedSource implements JobSource, JobSource.Opening {
  final List<JobRow> rows = new ArrayList<>();
  final List<String> reduced = new ArrayList<>();
  final List<String> asked = new ArrayList<>();
  @Nullable FailureException failure;
  String obstacle = "";
  String identity = "one";
  String unreadable = "";

  /** What a stopwatch shows that only this source's work moves on. */
  long nanos;

  long nanosForOutcomes;
  int opened;
  int closed;
  private long counter;

  void add(JobRow row) {
    rows.add(row);
    counter++;
  }

  void replace(JobRow row) {
    rows.replaceAll(old -> old.id().equals(row.id()) ? row : old);
    counter++;
  }

  @Override
  public JobSource open() {
    failIfSo();
    opened++;
    return this;
  }

  @Override
  public String identity() {
    return identity;
  }

  @Override
  public long changeCounter() {
    failIfSo();
    return counter;
  }

  @Override
  public String obstacle() {
    return obstacle;
  }

  @Override
  public List<JobRow> jobs() {
    return List.copyOf(rows);
  }

  @Override
  public JobOverview overview(JobRow row) {
    ReducedJob work = reduce(row);
    return Overviews.of(work.job(), work.findings(), work.holdPoints());
  }

  @Override
  public List<KeptOutcome> outcomes(JobRow row) {
    asked.add(row.id());
    nanos += nanosForOutcomes;
    return List.of();
  }

  @Override
  public ReducedJob reduce(JobRow row) {
    if (row.id().equals(unreadable)) {
      throw new InputException(row.id() + " has an unknown key.");
    }
    reduced.add(row.id());
    return InventedJobs.unmeasured();
  }

  @Override
  public void close() {
    closed++;
  }

  private void failIfSo() {
    FailureException now = failure;
    if (now != null) {
      throw now;
    }
  }
}
