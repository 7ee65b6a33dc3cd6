package datumpeg.desktop.source;

import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.Reading;
import datumpeg.analysis.reduce.Findings;
import datumpeg.analysis.reduce.Reduction;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.JobSummary;
import datumpeg.bridge.record.SiteRecord;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A site's record as the window reads it. One thread at a time. */
public final class SiteRecordSource implements JobSource {
  private final SiteRecord record;

  /** A source that closes the record when it is closed. */
  public SiteRecordSource(SiteRecord record) {
    this.record = record;
  }

  @Override
  public long changeCounter() {
    return record.changeCounter();
  }

  @Override
  public List<JobRow> jobs() {
    return record.jobs().stream()
        .sorted(Comparator.comparing(JobSummary::lastAt).reversed())
        .map(SiteRecordSource::row)
        .toList();
  }

  @Override
  public ReducedJob reduce(JobRow row) {
    StoredJob stored = StoredJob.load(record, row.id());
    Reduction reduction = new Reduction(stored.job(), stored.jobDigest());
    List<Findings> earlier = new ArrayList<>();
    for (int moves = 0; moves < stored.moved().size(); moves++) {
      List<MovedThing> movedSoFar = stored.moved().subList(0, moves);
      earlier.add(reduction.reduce(takenBefore(stored.readings(), movedSoFar), movedSoFar));
    }
    return new ReducedJob(
        stored.job(),
        reduction.reduce(stored.readings(), stored.moved()),
        earlier,
        stored.strays().stream().map(stray -> stray.target() + ": " + stray.why()).toList());
  }

  @Override
  public void close() {
    record.close();
  }

  /** The readings of rounds that had begun when only these things had been moved. */
  private static List<Reading> takenBefore(List<Reading> readings, List<MovedThing> movedSoFar) {
    return readings.stream()
        .filter(reading -> reading.round() <= MovedThing.roundOf(reading.target(), movedSoFar))
        .toList();
  }

  private static JobRow row(JobSummary summary) {
    String content =
        summary.revision()
            + " "
            + summary.readingCount()
            + " "
            + summary.voidCount()
            + " "
            + summary.lastAt();
    return new JobRow(
        summary.key().toString(),
        summary.name(),
        Optional.of(summary.lastAt()),
        summary.readingCount() - summary.voidCount(),
        content);
  }
}
