package datumpeg.bridge.record;

import java.util.Set;

/**
 * What was added to a record since it was looked at last.
 *
 * @param continues false if the row of the mark is not in the file: another file stands in its
 *     place, and nothing that was known of the record holds
 * @param now how far it has grown
 * @param touched the jobs with a new row, and those that lost a reading to one; more may be named
 *     than were touched, never fewer
 */
public record Growth(boolean continues, Mark now, Set<JobKey> touched) {
  public Growth {
    touched = Set.copyOf(touched);
  }
}
