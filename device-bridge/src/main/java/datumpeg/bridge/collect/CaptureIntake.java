package datumpeg.bridge.collect;

import datumpeg.analysis.measuring.MeasuringList;
import datumpeg.analysis.measuring.Stage;
import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.meter.MeterProfiles;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.CaptureEntry;
import datumpeg.bridge.record.entry.TimeOrderedIds;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * A capture taken into the record: its readings, then the row that names it by its digest.
 *
 * @param job with the plan it was taken by
 * @param played what came of it
 */
public record CaptureIntake(StoredJob job, CaptureReplay.Played played) {

  /** What to do with a capture that was replayed for the job before. */
  public enum Repeat {
    REFUSE,
    REPLAY_AGAIN
  }

  /**
   * Replays a capture. All of it is read before anything is stored; then each reading is committed
   * by itself, as it was while measuring.
   *
   * @param profiles that the capture may name
   * @throws InputException if there is no such job, stage or file, the file is damaged, or it was
   *     replayed before
   */
  public static CaptureIntake take(
      SiteRecord record,
      String jobName,
      String stageId,
      Path file,
      Repeat repeat,
      MeterProfiles profiles,
      SessionStart start) {
    StoredJob job = StoredJob.load(record, jobName);
    Stage stage = stage(job, stageId);
    String sha256 = sha256(file);
    if (repeat == Repeat.REFUSE && known(record, job, sha256)) {
      throw new InputException(
          "The capture "
              + file
              + " was replayed for the job "
              + job.key()
              + " before; nothing was stored. Use --again to replay it once more.");
    }
    CaptureReplay.Surveyed surveyed = CaptureReplay.survey(file);
    List<Wanted> list = Wanted.onAllFaces(MeasuringList.of(job.job().setOut(), stage));
    try (RecordSession session = record.openSession(start)) {
      ReadingStore store = ReadingStore.direct(session, job.key());
      StoredProfiles.keepOf(surveyed.header(), profiles, record.log(job.key()), store);
      Collector collector =
          new Collector(
              job.job(),
              stage.id(),
              list,
              job.moved(),
              store,
              new TimeOrderedIds(start.clock()),
              start.operator());
      CaptureReplay.Played played =
          CaptureReplay.of(file, collector, job.job().setOut(), list, profiles).play(surveyed);
      session.append(job.key(), new CaptureEntry(name(file), sha256, stage.id()));
      return new CaptureIntake(job, played);
    }
  }

  /**
   * A stage of the job.
   *
   * @throws InputException if it has none of that name; the message lists those it has
   */
  public static Stage stage(StoredJob job, String stageId) {
    return job.job()
        .stage(stageId)
        .orElseThrow(
            () ->
                new InputException(
                    "The job "
                        + job.key()
                        + " has no stage '"
                        + stageId
                        + "'; it has "
                        + String.join(", ", job.job().stages().stream().map(Stage::id).toList())
                        + "."));
  }

  private static boolean known(SiteRecord record, StoredJob job, String sha256) {
    return record.log(job.key()).captures().stream()
        .anyMatch(stored -> stored.entry().sha256().equals(sha256));
  }

  private static String name(Path file) {
    return file.toFile().getName();
  }

  /** SHA-256 of a file's bytes, as 64 lower-case hexadecimal digits. */
  public static String sha256(Path file) {
    // Piece by piece: a capture of weeks does not fit into memory.
    try (InputStream in = Files.newInputStream(file)) {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      in.transferTo(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchFileException e) {
      throw new InputException("There is no capture " + file + ".", e);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The capture " + file + " could not be read: " + e.getMessage() + ".", e);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
