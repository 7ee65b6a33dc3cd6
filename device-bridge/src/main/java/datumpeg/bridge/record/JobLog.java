package datumpeg.bridge.record;

import datumpeg.bridge.record.entry.AcceptanceEntry;
import datumpeg.bridge.record.entry.CaptureEntry;
import datumpeg.bridge.record.entry.MovedEntry;
import datumpeg.bridge.record.entry.PhotoEntry;
import datumpeg.bridge.record.entry.ProfileEntry;
import datumpeg.bridge.record.entry.ReadingEntry;
import datumpeg.bridge.record.entry.SignatureEntry;
import datumpeg.bridge.record.entry.TableEntry;
import datumpeg.bridge.record.entry.VoidEntry;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * All that was stored for a job at one moment, each list in the order {@link StoredEntry#BY_TIME}.
 *
 * @param readings all, the withdrawn among them
 * @param voids every void of this job, and every void elsewhere that names one of its readings
 */
public record JobLog(
    JobKey job,
    List<StoredEntry<ReadingEntry>> readings,
    List<StoredEntry<VoidEntry>> voids,
    List<StoredEntry<MovedEntry>> moves,
    List<StoredEntry<TableEntry>> tables,
    List<StoredEntry<CaptureEntry>> captures,
    List<StoredEntry<ProfileEntry>> profiles,
    List<StoredEntry<SignatureEntry>> signatures,
    List<StoredEntry<AcceptanceEntry>> acceptances,
    List<StoredEntry<PhotoEntry>> photos) {
  public JobLog {
    readings = List.copyOf(readings);
    voids = List.copyOf(voids);
    moves = List.copyOf(moves);
    tables = List.copyOf(tables);
    captures = List.copyOf(captures);
    profiles = List.copyOf(profiles);
    signatures = List.copyOf(signatures);
    acceptances = List.copyOf(acceptances);
    photos = List.copyOf(photos);
  }

  /** The ids that a void names. */
  public Set<UUID> voidedIds() {
    Set<UUID> ids = new HashSet<>();
    voids.forEach(stored -> ids.add(stored.entry().readingId()));
    return ids;
  }

  /** The readings that no void names. */
  public List<StoredEntry<ReadingEntry>> inForce() {
    Set<UUID> voided = voidedIds();
    return readings.stream().filter(stored -> !voided.contains(stored.entry().id())).toList();
  }
}
