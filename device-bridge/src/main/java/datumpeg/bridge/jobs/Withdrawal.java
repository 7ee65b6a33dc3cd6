package datumpeg.bridge.jobs;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.ReadingEntry;
import java.util.List;
import java.util.Locale;

/** Finds the reading that is to be withdrawn. */
public final class Withdrawal {
  private Withdrawal() {}

  /**
   * The reading in force with that id or the only one whose id begins so.
   *
   * @throws InputException if there is none, several, or it was withdrawn before
   */
  public static ReadingEntry find(SiteRecord record, JobKey key, String idOrBeginning) {
    JobLog log = record.log(key);
    String beginning = idOrBeginning.strip().toLowerCase(Locale.ROOT);
    List<ReadingEntry> matching =
        log.readings().stream()
            .map(stored -> stored.entry())
            .filter(entry -> !beginning.isEmpty() && entry.id().toString().startsWith(beginning))
            .toList();
    if (matching.isEmpty()) {
      throw new InputException(
          "The job " + key + " has no reading whose id begins with '" + idOrBeginning + "'.");
    }
    if (matching.size() > 1) {
      throw new InputException(
          "The ids of "
              + matching.size()
              + " readings of the job "
              + key
              + " begin with '"
              + idOrBeginning
              + "'; expected enough of the id to tell one.");
    }
    ReadingEntry reading = matching.get(0);
    if (log.voidedIds().contains(reading.id())) {
      throw new InputException(
          "The reading " + reading.id() + " (" + reading.target() + ") was withdrawn before.");
    }
    return reading;
  }
}
