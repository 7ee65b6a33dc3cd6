package datumpeg.desktop.source;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.locks.LockSupport;

/** Follows a record as the window does, in a process of its own, and prints each state. */
final class LookAtRecord {
  private static final long NANOS_BETWEEN_TURNS = 50_000_000;

  private LookAtRecord() {}

  /**
   * Follows it until it is killed.
   *
   * @param arguments the file of the record
   */
  public static void main(String[] arguments) {
    RecordFollower follower =
        new RecordFollower(
            arguments[0],
            new SiteRecordOpening(Path.of(arguments[0])),
            Clock.systemUTC(),
            LookAtRecord::print);
    while (true) {
      follower.turn();
      LockSupport.parkNanos(NANOS_BETWEEN_TURNS);
    }
  }

  private static void print(RecordState state) {
    System.out.println(
        (state.reached() ? "reached, " : "not reached, ")
            + state.jobs().stream().filter(job -> job.overview().isPresent()).count()
            + " worked out. "
            + state.trouble());
  }
}
