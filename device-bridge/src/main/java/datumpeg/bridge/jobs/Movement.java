package datumpeg.bridge.jobs;

import datumpeg.analysis.job.PlanFit;
import datumpeg.analysis.measuring.MovedThing;
import datumpeg.analysis.measuring.TargetFormatException;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.MovedEntry;

/**
 * Something that was moved, as it was stored: what stands on it starts its next round.
 *
 * @param job as it stood before
 * @param readingsBefore of them, how many stand on the thing
 */
public record Movement(StoredJob job, MovedThing thing, long readingsBefore) {

  /**
   * Says that something was moved.
   *
   * @param thingText such as column.A3, portal.3, wall.A or line.A1
   * @throws InputException if the record has no such job, the plan no such thing, or no reason is
   *     given
   */
  public static Movement store(
      SiteRecord record, String jobName, String thingText, String why, SessionStart start) {
    if (why.isBlank()) {
      throw new InputException("A reason is needed: what was moved, and why.");
    }
    MovedThing thing = parse(thingText);
    StoredJob stored = StoredJob.load(record, jobName);
    PlanFit.misfit(stored.job(), thing)
        .ifPresent(
            sentence -> {
              throw new InputException(sentence);
            });
    try (RecordSession session = record.openSession(start)) {
      session.append(stored.key(), new MovedEntry(thing.text(), why));
    }
    return new Movement(
        stored,
        thing,
        stored.readings().stream().filter(reading -> thing.touches(reading.target())).count());
  }

  private static MovedThing parse(String text) {
    try {
      return MovedThing.parse(text);
    } catch (TargetFormatException e) {
      throw new InputException(String.valueOf(e.getMessage()), e);
    }
  }
}
