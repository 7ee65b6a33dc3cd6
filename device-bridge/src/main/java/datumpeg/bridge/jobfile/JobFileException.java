package datumpeg.bridge.jobfile;

import datumpeg.bridge.failure.InputException;
import datumpeg.bridge.mistake.Mistake;
import datumpeg.bridge.mistake.Mistakes;
import java.util.ArrayList;
import java.util.List;

/** A job file that cannot be used. The message tells every mistake, one a line. */
public final class JobFileException extends InputException {
  private static final long serialVersionUID = 1L;

  private final ArrayList<Mistake> mistakes;

  JobFileException(Mistakes mistakes) {
    super(mistakes.text());
    this.mistakes = new ArrayList<>(mistakes.list());
  }

  /** In the order of the file. */
  public List<Mistake> mistakes() {
    return List.copyOf(mistakes);
  }
}
