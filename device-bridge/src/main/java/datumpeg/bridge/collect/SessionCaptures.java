package datumpeg.bridge.collect;

import datumpeg.bridge.failure.OuterWorldException;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.RecordSession;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.CaptureEntry;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The captures that sessions leave in one folder, each named in the record by its digest. A session
 * that was killed could not name its own: the next one does.
 */
public final class SessionCaptures {
  private static final String ENDING = ".capture.jsonl";
  private static final String TABLE_ENDING = ".unassigned.csv";

  private SessionCaptures() {}

  /**
   * Names every capture of a job's stage that the record does not name yet, and nobody still
   * writes.
   *
   * @throws OuterWorldException if the folder cannot be read
   */
  public static void name(
      Path folder, JobKey job, String stage, SiteRecord record, RecordSession session) {
    Set<String> named =
        record.log(job).captures().stream()
            .map(stored -> stored.entry().name())
            .collect(Collectors.toSet());
    for (Path file : files(folder, job.job() + "-" + stage + "-*" + ENDING)) {
      String name = file.toFile().getName();
      if (!named.contains(name) && isFinished(file)) {
        session.append(job, new CaptureEntry(name, CaptureIntake.sha256(file), stage));
      }
    }
  }

  /** Where a session with this capture puts values that have no target yet. */
  static Path tableBeside(Path capture) {
    String name = capture.toFile().getName();
    return capture.resolveSibling(name.replace(ENDING, TABLE_ENDING));
  }

  /** The tables of values without a target that sessions of a job's stage left. */
  static List<Path> tables(Path folder, JobKey job, String stage) {
    return files(folder, job.job() + "-" + stage + "-*" + TABLE_ENDING);
  }

  /** Whoever writes a capture holds a lock on it. */
  private static boolean isFinished(Path file) {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException writing) {
      return false;
    } catch (IOException e) {
      throw new OuterWorldException(
          "The capture " + file + " could not be looked at: " + e.getMessage() + ".", e);
    }
  }

  private static List<Path> files(Path folder, String pattern) {
    List<Path> files = new ArrayList<>();
    if (!Files.isDirectory(folder)) {
      return files; // a session on a full disk could not make it
    }
    try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, pattern)) {
      found.forEach(files::add);
    } catch (IOException e) {
      throw new OuterWorldException(
          "The folder " + folder + " of captures could not be read: " + e.getMessage() + ".", e);
    }
    Collections.sort(files);
    return files;
  }
}
