package datumpeg.bridge.collect;

import datumpeg.bridge.link.replay.CaptureHeader;
import datumpeg.bridge.meter.MeterProfile;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.meter.ProfileText;
import datumpeg.bridge.record.JobLog;
import datumpeg.bridge.record.entry.ProfileEntry;
import java.util.List;

/** Puts the profiles that know their instruments beside the readings taken with them. */
final class StoredProfiles {
  private StoredProfiles() {}

  /** Keeps a profile unless the job's rows hold it as it is. */
  static void keep(MeterProfile profile, JobLog log, ReadingStore store) {
    boolean known =
        log.profiles().stream()
            .anyMatch(stored -> stored.entry().sha256().equals(profile.sha256()));
    if (!known) {
      store.keep(
          new ProfileEntry(profile.id(), profile.sha256(), ProfileText.of(profile, List.of())));
    }
  }

  /** Keeps those of a capture whose links name their meter by the profile. */
  static void keepOf(CaptureHeader header, MeterProfiles profiles, JobLog log, ReadingStore store) {
    for (CaptureHeader.CapturedLink link : header.links().values()) {
      String identity = link.profile() == null ? "" : link.profile();
      String id = identity.replaceAll("@.*", "");
      if (!id.isEmpty() && id.equals(link.meter())) {
        keep(profiles.named(id), log, store);
      }
    }
  }
}
