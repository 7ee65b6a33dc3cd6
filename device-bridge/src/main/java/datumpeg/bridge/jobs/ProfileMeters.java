package datumpeg.bridge.jobs;

import datumpeg.analysis.job.Job;
import datumpeg.analysis.measuring.Meter;
import datumpeg.analysis.measuring.Reading;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.ProfileFile;
import datumpeg.bridge.record.StoredEntry;
import datumpeg.bridge.record.entry.ProfileEntry;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Meters the job does not describe, as the profiles stored beside its readings do. */
final class ProfileMeters {
  private ProfileMeters() {}

  /** By name; of several profiles of one name the newest. */
  static Map<String, Meter> of(
      Job job, List<Reading> readings, List<StoredEntry<ProfileEntry>> profiles) {
    Map<String, Meter> meters = new LinkedHashMap<>();
    for (StoredEntry<ProfileEntry> stored : profiles) {
      String id = stored.entry().id();
      boolean wanted =
          !job.meters().containsKey(id)
              && readings.stream().anyMatch(reading -> reading.meter().equals(id));
      if (wanted) {
        MeterProfile profile =
            ProfileFile.read(stored.entry().toml(), "meter profile " + id + " in the record");
        if (profile.instrument() != null) {
          meters.put(id, profile.instrument());
        }
      }
    }
    return meters;
  }
}
