package datumpeg.desktop.signoff;

import datumpeg.bridge.jobs.Photos;
import datumpeg.bridge.jobs.SignOff;
import datumpeg.bridge.jobs.StoredJob;
import datumpeg.bridge.record.SessionStart;
import datumpeg.bridge.record.SiteRecord;
import datumpeg.bridge.record.sqlite.SqliteRecords;
import java.nio.file.Path;
import java.time.Clock;
import java.util.function.Consumer;

/** Signs off in the record at a path. Immutable. */
public record RecordDesk(Path file, String programVersion, Clock clock) implements Desk {
  @Override
  public void sign(String job, String stage, String by) {
    inRecord(by, signOff -> signOff.sign(job, stage, by));
  }

  @Override
  public void accept(String job, String stage, String item, Acceptor acceptor) {
    inRecord(
        acceptor.by(),
        signOff ->
            signOff.accept(job, stage, item, acceptor.by(), acceptor.reference(), acceptor.why()));
  }

  @Override
  public void attach(String job, String stage, String by, Path photo) {
    Photos.require(photo);
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE)) {
      new Photos(file).attach(record, start(by), StoredJob.find(record, job), stage, photo, "");
    }
  }

  private void inRecord(String by, Consumer<SignOff> work) {
    try (SiteRecord record = SqliteRecords.open(file, SqliteRecords.Mode.WRITE)) {
      work.accept(new SignOff(record, start(by)));
    }
  }

  private SessionStart start(String by) {
    return new SessionStart(by, programVersion, clock);
  }
}
