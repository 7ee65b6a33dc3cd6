package datumpeg.bridge.meter;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Meter;
import org.jspecify.annotations.Nullable;

/** What a job takes from the profiles its meters speak by. */
public final class UsedProfiles {
  private UsedProfiles() {}

  /**
   * The name readings of a link carry: the profile's, where it knows its instrument and the job
   * describes none for such values; else empty.
   */
  public static String meterName(Job job, MeterProfile profile) {
    @Nullable Meter instrument = profile.instrument();
    boolean described =
        instrument == null
            || job.meters().values().stream()
                .anyMatch(
                    meter -> meter.quantity().dimension() == instrument.quantity().dimension());
    return described ? "" : profile.id();
  }
}
