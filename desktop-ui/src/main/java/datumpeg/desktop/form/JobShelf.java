package datumpeg.desktop.form;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where job files are kept. Each call opens the record and closes it; it may take long, and is made
 * off the JavaFX thread.
 *
 * <p>Every method may throw {@link datumpeg.bridge.failure.FailureException}, whose message is
 * shown; nothing was stored then.
 */
public interface JobShelf {
  /** The newest revision of a job's file; empty if the record has no such job. */
  Optional<String> newest(String job);

  /** The text of a job file outside the record, whatever it says. */
  String read(Path file);

  /**
   * Stores a job file as the job's next revision, unless the newest has the same bytes.
   *
   * @param base the newest revision that is known; where another stands in the record meanwhile,
   *     nothing is stored; empty if the job is thought to be new
   */
  Taken take(String text, String base);

  /**
   * What became of a job file.
   *
   * @param job as the command line knows it
   * @param strays sentences on readings that have no place in it
   */
  record Taken(String job, int revision, Outcome outcome, List<String> strays) {
    public Taken {
      strays = List.copyOf(strays);
    }
  }

  /** Whether it was stored. */
  enum Outcome {
    STORED,
    /** The newest revision has the same bytes. */
    NOTHING_NEW,
    /** The record has another newest revision than was thought. */
    OVERTAKEN
  }
}
