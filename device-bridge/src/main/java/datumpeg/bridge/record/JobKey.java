package datumpeg.bridge.record;

import java.util.regex.Pattern;

/**
 * Names a job: its id, unique within the organisation.
 *
 * @param organisation one line of text, never blank
 * @param job letters, digits and hyphens
 */
public record JobKey(String organisation, String job) {
  /** The organisation of a job file that names none. */
  public static final String LOCAL = "local";

  /** What rows carry that belong to no job. */
  public static final JobKey NONE = new JobKey("", "");

  private static final Pattern ORGANISATION =
      Pattern.compile("[^\\p{Cntrl}]*[^\\p{Cntrl}\\s][^\\p{Cntrl}]*");
  private static final Pattern JOB = Pattern.compile("[A-Za-z0-9-]+");

  public JobKey {
    boolean none = organisation.isEmpty() && job.isEmpty();
    if (!none && !ORGANISATION.matcher(organisation).matches()) {
      throw new IllegalArgumentException(
          "organisation is \"" + organisation + "\"; expected one line of text");
    }
    if (!none && !JOB.matcher(job).matches()) {
      throw new IllegalArgumentException(
          "job is \"" + job + "\"; expected letters, digits and hyphens");
    }
  }

  /** A job of the organisation {@value #LOCAL}. */
  public static JobKey local(String job) {
    return new JobKey(LOCAL, job);
  }

  /** The id alone for local jobs, else both: {@code ORGANISATION/JOB}. */
  @Override
  public String toString() {
    return organisation.equals(LOCAL) ? job : organisation + "/" + job;
  }
}
