package datumpeg.bridge.collect;

import datumpeg.bridge.exchange.UnassignedTable;
import datumpeg.bridge.record.JobKey;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.entry.Entry;
import java.nio.file.Path;

/**
 * Where what waits of a job's stage is kept: beside the record, or in a spare folder. One thread.
 */
final class WaitingFiles {
  /** For the most that may wait: a line is some 700 bytes. */
  static final int ROOM_BYTES = 1024 * ReadingStore.LARGEST_WAITING;

  /** Of a digest: enough that no two jobs of one user share them. */
  private static final int MARK_LETTERS = 16;

  private final Path recordFile;
  private final JobKey job;
  private final String stage;
  private final SpareFolders spares;
  private final SiteRecord record;
  private final RecordReturn back;

  WaitingFiles(
      Path recordFile,
      JobKey job,
      String stage,
      SpareFolders spares,
      SiteRecord record,
      RecordReturn back) {
    this.recordFile = recordFile;
    this.job = job;
    this.stage = stage;
    this.spares = spares;
    this.record = record;
    this.back = back;
  }

  /** The first choice for readings. */
  static Path ofReadings(Path recordFile, JobKey job, String stage) {
    return folder(recordFile).resolve("waiting-" + job.job() + "-" + stage + ".jsonl");
  }

  private static Path folder(Path recordFile) {
    return recordFile.resolveSibling("captures");
  }

  /** Of the readings, without those that the record has after all. */
  WaitingFile<Entry> readings() {
    return WaitingFile.of(
        ofReadings(recordFile, job, stage), spares, spareName("waiting-"), () -> record.log(job));
  }

  /** Of the values without a target, without those that a table has after all. */
  WaitingFile<UnassignedTable.Row> values() {
    return WaitingFile.of(
        folder(recordFile).resolve("values-" + job.job() + "-" + stage + ".jsonl"),
        spares,
        spareName("values-"),
        new WaitingRows(),
        rows ->
            UnassignedTable.notIn(SessionCaptures.tables(folder(recordFile), job, stage), rows));
  }

  /** By the job's first row: the same job of another record may have readings that wait there. */
  private String spareName(String begin) {
    String mark = back.mark().orElse("");
    String letters = mark.substring(0, Math.min(MARK_LETTERS, mark.length()));
    return begin + job.job() + "-" + stage + "-" + letters + ".jsonl";
  }
}
